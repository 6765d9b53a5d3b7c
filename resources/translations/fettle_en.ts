<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="en" sourcelanguage="en">
<context>
    <name>CaptureEditor</name>
    <message>
        <source>Choose file…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Remove</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1: choose file</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1: remove file</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1, no file</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No file yet. Drop one here.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1 rows</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Choose a file for %1</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>CellDelegate</name>
    <message>
        <source>%1 The cell stays blank.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1 The cell keeps %2.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>ChartPane</name>
    <message>
        <source>Charts of this step</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>ChartSide</name>
    <message>
        <source>%1, change</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>ChartView</name>
    <message>
        <source>Save or copy this chart</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Save the values (CSV)…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Save a drawing (SVG)…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Save a picture (PNG)…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Copy the picture</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Show the whole chart</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Chart</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Values (*.csv)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Drawing (*.svg)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Picture (*.png)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Save the chart</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>ChartWords</name>
    <message>
        <source>%1 could not be written: it is not a file.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1 could not be written: %2.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1 not measured</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1 from %2 to %3</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>1 point</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1 points</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1: nothing to draw yet. %2</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1: %2.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>ChecklistEditor</name>
    <message>
        <source>remark</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1: not answered</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1: ok</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1: not ok</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1: remark</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Space: ok    X: not ok    Delete: not answered    letters: remark    Enter: next</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>ChecklistModel</name>
    <message>
        <source>✓ ok</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>✗ not ok</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>not answered</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>look at</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>found</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>remark</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>by, at</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>ChoiceBox</name>
    <message>
        <source>not chosen</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>ColumnMapping</name>
    <message>
        <source>needed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>column of the text</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>unit there</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>column for %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>unit of %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1 (if there)</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>Document</name>
    <message>
        <source>No session is open. Start one to enter readings.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>An earlier session is shown; it is read only.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>This run is no longer there.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>notes</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>new run</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>accept</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>withdraw acceptance</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>adopt %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>take back %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>part change</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>new session</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>mark</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>take back the mark</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>Evaluator</name>
    <message>
        <source>%1 is not in the machine file.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>EvenGridDialog</name>
    <message>
        <source>Even grid</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>x from</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>x to</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>lines in x</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>y from</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>y to</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>lines in y</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lay out</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>FileLine</name>
    <message>
        <source>Type them instead</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The readings come from %1.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>FindingsPanel</name>
    <message>
        <source>Fault</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Caution</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Note</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Findings</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>FINDINGS</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Go to %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Findings appear here while you enter readings.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing was noticed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1 ›</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>FormWords</name>
    <message>
        <source>&quot;%1&quot; is not one of the choices: %2.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&quot;%1&quot; is neither yes nor no.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>yes</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a file is chosen, it cannot be typed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How many lines? Write the number behind a colon, as in 15..285: 6.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing was pasted: there are more cells than the grid has from here.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing was pasted: row %1, column %2, %3</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The positions must rise or fall throughout; %1 and %2 do not.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>columns are parted by</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>commas</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>semicolons</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>tabs</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>blanks</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>decimal sign</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>point</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>comma</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>lines left out at the top</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The columns have no names.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Names of the columns in a line of their own, units below it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Names of the columns in a line of their own.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Names of the columns in the comment above the rows.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Units stand above them.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Comment: %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Cut</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Copy</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Paste</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take from a file…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Insert a row</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Remove rows</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Leave rows out, or take them in again</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1 is read with</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Columns</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Enter goes to the right</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Enter goes down</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>row %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>rows %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>row %1, %2</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>clear cells in %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>insert row %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>remove %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>include %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>exclude %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing was pasted: row %1 brings %2 cells, but from here there are only %3 columns.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing was pasted: row %1, %2</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>paste into row %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>paste into rows %1 to %2</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>one of %1 in the list, which Space opens</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&quot;%1&quot; may be %2.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no choice begins with &quot;%1&quot;: %2.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>GridEditor</name>
    <message>
        <source>front of the bed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1: positions in %2</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>15  150  285 or 15..285: 5</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1: what the grid can do</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Even grid…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1, x %2 y %3</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1, typed instead of a file</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Copy</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Paste heights</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Paste a whole grid…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>clipboard</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take from a file…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Clear the grid</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>clear %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1, positions in %2</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>clear cells in %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>paste into %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>paste %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1, even grid</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Choose a file for %1</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>GridModel</name>
    <message>
        <source>x %1, y %2: %3</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>blank</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>GridTurning</name>
    <message>
        <source>front of the bed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>In the order of the text, such as 15 150 285, or 15..285 for even distances.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a line of the text is</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>one y</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>one x</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>it begins</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>at the front</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>at the back</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>and runs</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>left to right</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>right to left</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>positions in x, mm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>positions in y, mm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the grid as it will be taken in</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Positions in %1: %2</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>HeaderBar</name>
    <message>
        <source>%1 min</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1 h %2 min</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>machine</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>session</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>operator</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>filament</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>at the bench</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>accepted</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Report…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1 · %2</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>none, start one</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1 of %2</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>, %1 due</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>HelpView</name>
    <message>
        <source>What to do</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1: what to do</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>InputForm</name>
    <message>
        <source>instrument of %1</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>InstrumentBar</name>
    <message>
        <source>± %1 and %2 % of the reading</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>± %1 % of the reading</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>± %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>reads to %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Read with: %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>instrument of %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1: %2 ▾</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>IntakeDialog</name>
    <message>
        <source>%1 from %2</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the first rows of the text</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>how much of the text is read</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Say which column of the text is %1.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>reading…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Reading was stopped; change something to read it again.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1 lines of heights</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1 rows</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Stop reading</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Take in</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A sound file.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>time, s</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A sound file: %1 samples a second, channels: %2, %3 s long. Its level over time is read; loudest is %4 at %5 s, where 1 is the most a file can hold.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>level</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>MachineDialog</name>
    <message>
        <source>Machine</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Sheet</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Settings as found</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Instruments</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Tolerances</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What is physically there, not what the controller believes. Only the name is needed; a step that needs more says so.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What the controller was delivered with, as read on its screen or in its files.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The instruments of this bench. Resolution acts on each reading; the limit of error is common to all readings of one instrument. A column&apos;s instrument is chosen on its step.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Between which limits a result passes on this machine. Defaults are common practice unless the step text names a source. A blank end is open.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1: an entry is needed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Discard what was entered here?</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>MainWindow</name>
    <message>
        <source>Fettle</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Entry</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Charts</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1 – Fettle</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Machines (*.fettle)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Edit</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Undo</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Redo</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Undo %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Redo %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Help</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;What to do in this step</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;About Fettle</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>About Fettle</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&lt;b&gt;Fettle %1&lt;/b&gt;&lt;p&gt;A commissioning bench for filament printers. To fettle is to put a machine in order.&lt;/p&gt;&lt;p&gt;Free software under the GNU General Public License, version 3 or later. It comes without warranty. Work on the mains belongs to a qualified person, and local codes come before anything this program says.&lt;/p&gt;</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;File</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;New machine…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Open…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Save a &amp;copy…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Export history as text…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Report…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>To enter at the &amp;machine</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Quit</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Machine</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Sheet, settings found, &amp;instruments, tolerances…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A &amp;part was changed…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;New session…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Edit session…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Show session</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;View</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Next step</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Previous step</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Large</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>New machine</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Open a machine</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>none yet</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Save a copy</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Export history as text</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>History (*.json)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Export</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1 cannot be written: %2.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Report</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>PDF (*.pdf);;Web page (*.html);;Table (*.csv)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The report is in %1.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>New session</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Session</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>session</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1: %2 %3</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A part was changed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What was changed?</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What exactly, in a few words?</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>machine</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Step</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Enter readings</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>New &amp;run</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Accept, or take back</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1 was accepted and has been changed: it is no longer accepted.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Demo machine</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The demo machine is invented; it is a file of its own to try things on: %1.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The copy is in %1.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The history is in %1.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Done again: %1.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Undone: %1.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Done again in %1: %2.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Undone in %1: %2.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pre&amp;vious run</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Ne&amp;xt run</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Override…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Override…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Open recen&amp;t</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>NotesEditor</name>
    <message>
        <source>Notes</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What you saw, changed or doubted.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>ReasonBar</name>
    <message>
        <source>Cancel</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the reason, kept with the row</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>Report</name>
    <message>
        <source>page %1 of %2</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1: the pages could not be drawn.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1: a report is written as .pdf, .html or .csv.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>ResultTableView</name>
    <message>
        <source>Values side by side</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>ResultsPanel</name>
    <message>
        <source>Results appear here while you enter readings.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Still missing: %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>as found %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take back</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Adopt</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take back %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Adopt %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>as found: not known</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1, measured</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>SessionDialog</name>
    <message>
        <source>&amp;Operator</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Reason</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>new machine, new hot end, yearly check</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Filament</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>material, colour, lot</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Print hours so far</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Print hours cannot be negative.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>SettingsPage</name>
    <message>
        <source>To enter at the machine</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing was adopted in this session yet. Adopt a proposed value on a step&apos;s page.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Enter these at %1, then switch it off and on and read them back.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>setting</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>as found</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>enter</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>unit</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>from</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Save settings</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>CSV (*.csv)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1 cannot be written: %2.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>±</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Copy as text</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Copy as C&amp;SV</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Sa&amp;ve CSV…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Print…</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>StartPage</name>
    <message>
        <source>No machine is open</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A machine is one file: its sheet, every session at the bench, the readings and what follows from them. Make a new one, or open one; then start a session and go through the steps in the list.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;New machine… (Ctrl+N)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Open a machine… (Ctrl+O)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Look at the &amp;demo machine</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Opened before</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>StepList</name>
    <message>
        <source>Steps</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>StepListModel</name>
    <message>
        <source>%1, step %2, %3</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>StepPage</name>
    <message>
        <source>Enter</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Run</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>New run</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What to do: F1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Evaluating</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Cancel</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Results</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Evaluate with today&apos;s values</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Notes</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>run %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Evaluated with older values: the machine sheet, a value found or an accepted result has changed since.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Override…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Not affected…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Withdraw acceptance</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Accept</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Override</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Why may this step be done all the same? The reason is shown from now on.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Not affected</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Why does the change not touch this step?</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Step</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Shown as accepted on %1, in an earlier session.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A new run begins a measurement of today.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Withdraw override</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Affected after all</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Accepted with %1.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Not accepted: something is missing or refused.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>TableEditor</name>
    <message>
        <source>%1: what the table can do</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1, typed instead of a file</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Row %1 is left out: %2.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Leave out row %1 because</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Leave out %1 rows because</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Leave out</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Choose a file for %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>clipboard</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>paste into %1</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>TableModel</name>
    <message>
        <source>row %1, %2: %3</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>blank</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>left out: %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Left out: %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Enter: choose a file…</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>Text</name>
    <message>
        <source>Due since {0}: {1}{2}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Due since {0}: {1}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>This program has no step {0}; its record is kept as it is.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no header fits a column of the table {0}; the columns are {1}, and others can be named under &quot;columns&quot;.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Frame, braces</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Moved or transported</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>First ten hours or first heat cycle</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bed, surface</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Probe, its mount</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nozzle</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Hot end, heater, sensor</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Fan, sock, enclosure</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Feeder</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Spool, tube, feed path</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Belts, pulleys, motors</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Motor current, driver</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Tool head</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Electronics, firmware</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Filament</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Shaper or acceleration adopted</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Print temperature adopted</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>empty</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>incomplete</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>computed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>accepted</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>due</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>blocked</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>not affected</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>overridden</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} Overridden: {1}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Line {0}, column {1}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Line {0}, column {1} ({2})</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Reading was stopped.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The file &quot;{0}&quot; cannot be read; check that it exists and may be opened.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>There is no text to read; a table with one row of numbers per line is needed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>This is not a text table but binary data; a plain text of numbers is needed, such as comma-separated values.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No row of numbers was found; a table has one reading per line, its columns parted by commas, semicolons, tabs or blanks.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Line {0} has a quotation mark that is not closed on the same line; close or remove it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: &quot;{1}&quot; is not a number; digits with a decimal comma are needed, such as 12,5.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: &quot;{1}&quot; is not a number; digits with a decimal point are needed, such as 12.5.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: &quot;{1}&quot; is not a clock time; hours, minutes and seconds are needed, such as 14:05:00.5.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} is empty; a number is needed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} holds a number too large to convert; check the column and its unit.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Line {0}, the last, has {1} cells where the table has {2} columns; the text seems to be cut off there, complete or remove the line.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Line {0} has {1} cells where the table has {2} columns; every row needs the same number.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The table has a header but no row of numbers; at least one row is needed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The table has no header; say which of its {0} columns is {1}, by number from 1.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No column was recognised as {0}; name it so or say which one it is: {1}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>There is no column &quot;{0}&quot; to take {1} from; the columns are {2}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>There is no column {0} to take {1} from; columns are numbered 1 to {2}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&quot;{0}&quot; is not a column asked for here; possible are {1}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>More than one column may be {0}: {1}; say which one by its number from 1.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Column {0} is given both as {1} and as {2}; each needs a column of its own.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The unit &quot;{0}&quot; of {1} is not known; possible are {2}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The unit &quot;{0}&quot; does not suit {1}; possible are {2}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The column for {0} holds clock times such as 14:05:00; its unit must be clock.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The column for {0} is said to hold clock times, but it holds plain numbers; say s, ms or us.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: the column for {1} is empty; numbers are needed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: the column for {1} holds words such as &quot;{2}&quot;; numbers are needed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A capture needs the column {0}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The capture has {0} rows; at least {1} are needed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Line {0}: time must run forwards, but {2:.9g} s follows {1:.9g} s; each row must be later than the one before.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The grid has {0} rows and {1} columns of heights; at least 2 of each are needed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The grid does not say where it was measured; give its {0} positions of {1}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} positions of {1} are given, but the grid has {2}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The positions of {0} must all rise or all fall; {1:.6g} follows {2:.6g}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The positions of {0} must be numbers.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>caliper</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>caliper zeroed on closed jaws</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>dial indicator</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>micrometer</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>steel rule</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>pocket scale</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>milligram scale</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>reference thermometer</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>multimeter</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>four-wire low-ohm tester</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>alignment by eye over a mark</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>probe height</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>stopwatch</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>commanded, exact</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>pass</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>undecided</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>fail</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no limit set</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} min</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} h {1} min</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Machine</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Date</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Operator</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Reason</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Print hours so far</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Time at the bench</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Session</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Mains voltage, heat and moving parts can hurt. Guards stay on, hands stay out, and somebody stays with a machine that heats or moves for the first time. Work on the mains belongs to a qualified person; local codes come before anything said here.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>accepted {0}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>evaluated with older values</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Step</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>State</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Verdict</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Value</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Remark</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} of {1} steps are accepted and not due again.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Where the steps stand</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>± stands before the expanded uncertainty U, brackets hold an interval, both for 95 % (JCGM 100:2008). A verdict leaves a guard band at its limits (ISO 14253-1); undecided means that U is too large to tell.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Commissioning report</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Settings as found and as left</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Setting</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>As found</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Found</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>As left</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>By</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>not known</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>as found</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No setting is known as found, and none was adopted.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Changes of parts</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Part</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Note</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Makes due</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>None noted.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Open</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What is open</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} (default)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Left out because</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Item</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>In order</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Initials</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Time</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>– open</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>✓ yes</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>✕ no</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>y&#xa0;\&#xa0;x, mm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Read from {0}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What was entered cannot be read as a table.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Entered</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Instruments</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Files read</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Result</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Limit</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: not given ({1}).</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Results</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Proposed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>not adopted</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Settings, as found and as left</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Findings</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>See {0}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Not evaluated. {0}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Incomplete; still missing: {0}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>– Not adopted: {0}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} and {1} % of the reading</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} % of the reading</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Readings</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Instrument</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Resolution</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Limit of error ±</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>File</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>SHA-256 of its content</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Done before its way was free, {0}: {1}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Said not to be affected, {0}: {1}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Run</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Run {0} of {1}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>session of {0}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>not accepted</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Readings were changed after this evaluation.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Evaluated with older values of the machine sheet, of the settings as found or of other steps.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Notes</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>yes</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>✕ Fault</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>! Caution</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>i Note</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Paste or type the grid of heights, or its points, to see the bed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>height, tilt removed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>height</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>height of the fitted surface</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>not to be trusted</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>touched</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>points</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>off the bed or on a clip</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Heights</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Tilt removed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Cuts along x</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Cuts along y</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Left side (−x)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Right side (+x)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Front side (−y)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Back side (+y)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>low</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>high</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: {1} lies {2} mm {3} against the straight continuation of the points beside it, in {4} % of the lines. The probe is probably off the bed or on a clip here. This surface must not be used.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the outermost line</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the second line</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: the edge is {1} mm {2}, and the opposite side is alike: the plate or sheet seems to curl. Look whether it lies flat when soaked.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: the edge is {1} mm {2}: the plate or sheet seems to curl, or a clip lifts it. Look whether it lies flat when soaked.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: {1} mm at an edge is a fault of the measurement, not a bed (limit of 1 mm: common practice, no source).</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the grid has fewer than 4 lines</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The grid has {0} × {1} lines: an edge off the bed shows only with 4 lines or more each way.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>bow and twist need six points or more, on three lines each way</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Points: {0} different points are too few for a plane; three or more that are not on one line are needed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Points: all of them lie on one line; a plane needs three or more that do not.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Points, rows {0} and {1}: the same place {2}, {3} has the heights {4} and {5} mm; exclude one of them or give it another place.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Grid of heights: a line at {0} = {1} mm is not possible; {2} to {3} mm is accepted.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Where the probe tip touched.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Height</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Surface there; plus is up.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A grid and points were both entered; the grid counts.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The scatter of the probe is not known and is taken as 0: U holds its resolution and limit of error only.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The bed soaked {0} min; its shape settles only after {1} min, a thick plate after 30 (common practice, no source).</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bed temperature or soak time was not noted; a bed has another shape when cold.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>grid too small or even: no advice (odd counts of 7 or more each way are needed)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the surface must not be used: an edge lies off the bed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the points do not fill a grid to within 0.1 mm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The points do not fill a grid to within 0.1 mm: edges off the bed, spikes and steps were not looked for.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Grid of heights</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Heights as probed, one row for each y; plus is up.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Points</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Instead of a grid: three points or more, anywhere on the bed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bed temperature</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>While probing; best that of printing.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Soaked</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Time at this temperature before probing: 15 min, thick plates 30.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bed shape</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How the hot bed tilts and bends, and whether every point was really on it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Hot bed and nozzle: keep hands off the bed while it is probed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Flatness, minimum zone</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Flatness, least squares</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Root mean square from the plane</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Range of the raw heights</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Tilt along x</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Tilt along y</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bow along x</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bow along y</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Twist</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Largest step at an edge</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Error between the points of half the grid</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Grid spacing that is enough</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Columns at that spacing</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Rows at that spacing</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source> in {0}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a whole number</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a number</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} from {1} to {2}{3}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} of {1} or more{2}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} is not a number; {1} is needed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} is not possible; {1} is needed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} is not one of the choices: {1}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} is not a text in quotes.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a file is needed, as {&quot;file&quot;: path}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a grid needs x and y as lists of numbers and z with one row for each y.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} rows of heights do not fit {1} values of y; one row for each y is needed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>row {0} has not the {1} heights that x asks for.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the lines of x and of y must rise (or fall) without a repeat.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a list of {item, ok, remark} is needed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a table is an array of objects keyed by column.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>row {0} is not an object keyed by column.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}, row {1}, </source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>cartesian, bed moves in z or not at all</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>bed moves in y</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>two crossed belts</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>delta</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: the lower limit {1} mm is not below the upper limit {2} mm.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The bed begins at {0} = {1} mm, the travel only at {2} mm: the nozzle cannot reach that edge.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The bed ends at {0} = {1} mm, the travel already at {2} mm: the nozzle cannot reach that edge.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Drive</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>belt</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>screw</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Belt pitch</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pulley teeth</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Screw lead</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Full step</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Microsteps</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Motor current</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Rated current</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Current is given as</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>rms</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>peak</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Name</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Serial number</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Location</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Motion</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Travel from x</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Travel to x</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Travel from y</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Travel to y</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Travel from z</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Travel to z</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>rectangle</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>disc</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bed from x</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bed to x</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bed from y</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bed to y</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bed radius</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nozzle bore</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Filament, nominal</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>direct</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>through a tube</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Hot end power</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Hot end, highest</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Polymer tube down to the nozzle</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bed power</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bed, highest</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Supply voltage</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Supply power</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A machine sheet is one flat JSON object.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Machine sheet, {0}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Travel x</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Travel y</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Travel z</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bed x</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bed y</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A nozzle bore of {0} mm is not narrower than the filament of {1} mm.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The heaters take {0} W, more than 80 % of the supply&apos;s {1} W (common practice, no source); a bed fed from the mains does not count here.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} rests on one reading: U holds the instrument alone, not the scatter. Two more readings would show it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Row {0}: {1} {2} lies far from the others. It counts; exclude the row with a reason if you know one.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>instruments: no measured column is called {0}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>instruments: {0} needs a resolution r and a limit of error e, both numbers of 0 or more in {1}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>instruments: an object {column: {name, r, e}} is needed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>More readings, or an instrument with a smaller limit of error, would do.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Make safe</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Heat</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Plastic</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Limits and proof</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The inputs of a step are one JSON object keyed by field.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Not used, because this step has no such field: {0}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The work was cancelled.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>could not be computed from these readings</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>limit {0}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>plateau and falling line</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>hinge, 95 %</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>5 % below the plateau</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Delivered against flow</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>flow</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>delivered / commanded</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Enter steps of flow with the mass that came out, or with the part delivered.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>measured</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>excluded</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>print speed at {0} × {1} mm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Flow over height</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Enter the graded piece and the height at which it turns bad.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>turns bad</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>flow of the piece</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} mm wide</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Speeds for line sizes</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>layer height</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>speed at the safe flow</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Enter line sizes, and steps that give a safe flow, to see their speeds.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>chosen</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bad heights, row {0}: {1} mm lies within the first stair of {2} mm, so nothing good was printed; print a piece that begins at a lower flow.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bad heights, row {0}: the bad height {1} mm is not above the last good one, {2} mm.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Graded piece: {0} rows were entered; the bad heights belong to one piece, exclude the others.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The flow limit</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Steps, row {0}: {1} was typed as delivered, but the mass of {2} g makes it {3}; leave one of them blank.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Three steps give a hinge but no interval: nothing is known of their scatter. Add steps on both sides of the hinge.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The interval of the hinge, {0} … {1} mm³/s, meets the end of the tested flows, {2} … {3} mm³/s: add steps {4}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>at lower flows</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>at higher flows</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>at lower and at higher flows</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>At low flow {0} of the commanded plastic comes out. That is not melting: look at the feed&apos;s steps per mm, the filament&apos;s diameter and the density first.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>delivery does not fall within the tested flows</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Delivery does not fall up to {0} mm³/s: add steps at higher flows.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the plateau is not above zero</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the lower limit of the flow limit lies below the tested flows</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>four steps or more are needed for an interval</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Delivery has not fallen by 5 % up to {0} mm³/s; {1} mm³/s only continues the falling line. Add steps at higher flows.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>delivered less fitted,</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the density is not known</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>there is no flow limit within the tested flows</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the hot end&apos;s power is not on the machine sheet</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the hold duty is not known</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Power is not the limit: {0} W needed, {1} W left at this temperature. A longer melt zone would help, a stronger heater would not.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The heater is the limit: {0} W needed, {1} W left at this temperature. The nozzle cools at this flow.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Line sizes, row {0}: a line {1} mm wide and {2} mm high is higher than wide; a width of {2} mm or more is needed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} mm wide, {1} mm high</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>there is no safe flow</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Flow steps and a graded piece were both entered; the steps count.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Free air reads high: a print adds back pressure. Confirm the flow with an acceptance print.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>For comparison: short melt zones give 8–12, long ones about 15, extra long ones 25–30 mm³/s (common practice, no source).</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Flow</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Commanded flow.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Delivered</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Part of what was commanded that came out, 1 for all; blank when the mass is weighed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Mass</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Of what came out.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Volume</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Commanded in this step; blank: the one volume for all.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Density</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Of this step&apos;s filament; blank: the one density for all.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Flow at the bottom</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Flow per mm of height</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>By how many mm³/s the flow grows with each mm of height.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Height of a stair</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Needed when only the bad height was noted.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Last good height</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Blank: one stair below the bad height.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bad height</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Where walls first turn thin, matt or torn.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Line width</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Layer height</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nozzle temperature</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>At which the plastic was melted.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Commanded in each step that has no volume of its own.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Of the solid filament, from its data sheet.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Steps</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Eight flows or more, two of each, well below to well above the fall.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Graded piece</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Instead of steps: a printed piece whose flow grows with height.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bad heights</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Where the graded piece turns bad; one row per repeat.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Margin</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Part taken off the lower limit for the safe flow.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Line sizes</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lines to know the speeds of; the first one gives the upper axis of the chart.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Specific heat</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Of the plastic, between room and nozzle; most lie between 1.2 and 2.3.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Room</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Hold duty</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Duty that holds the temperature without flow, 0 to 1; blank: from heater control.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Melt rate</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How much plastic this hot end melts before it falls behind.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Hot nozzle and hot strands burn at a touch. Keep hands clear.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Flow limit</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Safe flow</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Hinge</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Fall per mm³/s beyond the hinge</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Speed at the flow limit</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Speed at the safe flow</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Line</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Heat needed at the flow limit</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Heat the heater has left</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Plan of the bed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Enter bed and travel on the machine sheet, the probing grid as found, and a mark under nozzle and probe.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>bed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>margin</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>travel of the nozzle</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>travel of the tip</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Probing grid {0}: it begins at {1} mm and ends at {2} mm; the beginning must be below the end.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>column {0}, row {1} at {2}, {3}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} of {1} points of the probing grid land off the bed; the farthest, {2}, is {3} mm beyond the edge.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} of {1} points of the probing grid land in the margin; the nearest to the edge, {2}, is {3} mm inside it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} of {1} points of the probing grid send the carriage outside its travel: the point planned at {2}, {3} needs it at {4}, {5}, but the travel is x {6} … {7} and y {8} … {9} mm.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the probing grid is not known: {0}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the offset as found is not known</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the size of the bed is not on the machine sheet</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the travel in x and y is not on the machine sheet</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The probe offset</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>offset x</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>offset y</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Marks and direct offsets were both entered; the marks count.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The probe tip reaches no part of the bed: x {0} … {1} mm and y {2} … {3} mm of travel, tip at {4}, {5} mm, leave nothing inside the margin of {6} mm.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Carriage coordinate with the nozzle over the mark.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Carriage coordinate with the probe tip over the same mark.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nozzle x</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nozzle y</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Probe x</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Probe y</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Offset x</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Probe tip from the nozzle; plus when the tip is at larger x.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Offset y</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Probe tip from the nozzle; plus when the tip is at larger y.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Marks</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Three marks or more, well apart: the same mark once under the nozzle, once under the probe tip.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Offset measured directly</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Instead of marks: the probe tip measured from the nozzle.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Strip along the edge of the bed where no touch is wanted.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Where the probe tip is meant to land; blank: as found.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Probing grid from x</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Probing grid to x</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Probing grid from y</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Probing grid to y</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Probing columns</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Points along x; blank: as found.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Probing rows</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Points along y; blank: as found.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Probe position</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Where the probe tip sits beside the nozzle, and where it lands on the bed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Hot nozzle and moving carriage: keep fingers off the bed while it moves.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Probe offset x</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Probe offset y</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Offset x, measured less as found</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Offset y, measured less as found</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Tip may touch from x</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Tip may touch to x</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Tip may touch from y</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Tip may touch to y</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Probing points off the bed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Probing points in the margin</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Probing points out of reach</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Off the bed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>In the margin</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Out of reach</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>this shaper leaves more than 5 % at its own frequency</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the band has no upper end within reach</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no capture of this axis has a mode to go by</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the heaviest mode is damped so much that no shaper is made for it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing is proposed: {0}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Frequency</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}, fitted</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: modes</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>floor, {0}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} at {1} Hz</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: vibration left</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Frequency of a mode</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Frequency of the shaper</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}, weighted with the spectrum</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Acceleration limit</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Add a sweep, a tap or a run with the file of the vibration sensor.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Captures, row {0}: {1}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>axis {0} does not move along {1}; its direction is {0} or a belt diagonal, p or q.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a {0} is not excited by {1}; leave the excitation blank or choose one that fits the kind.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the sweep ends at {0} Hz and begins at {1} Hz; it must end higher.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>column a{0} cannot point along two axes of the machine; assign each sensor axis once.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the file has no column {0}, which is needed for motion along {1}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the capture needs three rows or more with rising time.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the longest stretch without a gap has {0} samples; one segment of {1} s takes {2}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>sensor x</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>sensor x reversed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>sensor y</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>sensor y reversed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>sensor z</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>sensor z reversed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Axis</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>belt diagonal p</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>belt diagonal q</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The axis that was shaken; on crossed belts p and q compare the two belts.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Position</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Where the tool head stood, in a word: centre, front left.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Direction</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The way the head moved; blank: along the axis.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Kind</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>sweep</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>tap</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>run</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Load</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What the axis carried, such as a full spool or the heaviest piece.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Excitation</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>flat</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>constant velocity</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>unknown</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Constant velocity: the acceleration grows with the frequency, as in most sweeps. Blank: constant velocity for a sweep, tap for a tap, unknown for a run.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Sweep from</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Sweep to</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Sweep time</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Along machine x</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The sensor&apos;s axis that points along plus x of the machine.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Along machine y</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Along machine z</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Capture</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Acceleration x</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Acceleration y</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Acceleration z</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the sensor was at its limit</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: signal</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Acceleration</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: time and frequency</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: decay</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>fitted</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>two-hump EI</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>three-hump EI</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Recommended: it leaves {0} % where {1} % may be left, and of those that do it allows the highest acceleration, {2} mm/s².</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Recommended for want of a better: no shaper keeps to {0} %; this one leaves {1} % and of those near the least it allows the highest acceleration, {2} mm/s².</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>It leaves {0} %, but allows only {1} mm/s² where {2} allows {3} mm/s².</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>It leaves {0} % at best where {1} % may be left.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>It leaves {0} % and allows {1} mm/s²; {2} leaves {3} % and allows {4} mm/s².</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The sweep then passed about {0} Hz; a mode near that reads wrongly.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: {1} s of samples are missing at {2} s; no segment spans the gap.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: samples are missing in {1} places, the longest gap is {2} s at {3} s; no segment spans one.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: the intervals between samples scatter by {1} % of their median of {2} ms; over 5 % smears high frequencies.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: {1} samples a second are fewer than 4 × {2} Hz, the end of the sweep; sample faster or end the sweep at {3} Hz.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: the capture lasts {1} s, the sweep {2} s; either the end of the sweep is missing or the sweep time was entered wrongly.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: {1} stays at its limit ({2} to {3} mm/s²) in {4} % of the rows; the capture proposes nothing. Set the sensor to a wider range or shake less.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: the mode at {1} Hz is {2} Hz wide and the density resolves {3} Hz, so its damping reads too high; segments of {4} s or more would do.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: the sweep runs at {1} Hz/s, too fast for the mode at {2} Hz to build up; at most {3} Hz/s, that is {4} s for this sweep.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: no mode was found, {1}. Excite harder, check how the sensor is fixed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: the excitation is unknown and taken as flat; dampings and the weights of the modes lean on that.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: the frequency of the ripples</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: behind a corner the axis gathers speed for {1} mm (to {2} mm/s at {3} mm/s²); no crest counts there.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: the printed ripples stand at {1}, the nearest mode at {2} Hz; the difference of {3} Hz exceeds its uncertainty of {4} Hz. Look at load and position of the capture, and count again.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: the damping ratio of the heaviest mode is {1}, over 0.2; something drags or rattles, or two modes lie close together.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: no shaper leaves less than {1} % of the vibration; the best leaves {2} %. The modes lie too far apart: stiffen the frame, tighten belts and joints, take weight off.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the sweep is so short that segments of {0} s leave nothing of it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no peak stands out of the density and ten times over its floor</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the density does not determine any mode well enough</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>nothing rings after the blow</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the decay does not determine any mode well enough</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&quot;{0}&quot; is no amplitude; numbers above 0 in mm with blanks between them are needed, such as 0.12 0.09 0.07.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the amplitudes do not fall; give them crest after crest from the corner on.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Speed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Speed along the wall on which the ripples stand.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Intervals</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Whole intervals from the first crest to the last; not the number of crests.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Distance</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>From the first crest counted to the last.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Amplitudes in mm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Crest after crest with blanks between them, 0.12 0.09 0.07; may stay blank.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>printed ripples</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Frequency of a mode at a position</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Damping ratio of a mode at a position</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Damping ratio of a mode</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Position that decides</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Frequency of printed ripples</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lower end of its 5 % band</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Upper end of its 5 % band</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Length of the shaper</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Spread of the shaper in time</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Corner speed limit</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Why, or why not</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Recommended shaper</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Captures</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>One row for each recording: every axis at mid travel and where it moves most mass.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Printed ripples</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Ripples behind the corners of a print; they count where an axis has no capture.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Segment</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Length of the pieces the density is averaged over; longer resolves finer.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How far a mode may wander with load and position, as a share of its frequency.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Share of the unshaped vibration.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Path deviation allowed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How far shaping may round the path; it sets acceleration and corner speed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Design damping</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Damping ratio where nothing was measured.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Resonance</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Find what rings on each axis and the shaper and acceleration that keep it quiet.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The axes move fast and by themselves: travel clear, guards on, hands out, one hand at the emergency stop, and stay by the machine.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Input shaper</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the disk is full</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the disk reports a failure</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the system does not allow it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>it does not fit the records that are there</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a row of {0} belongs to no row of {1}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the name is taken</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>This is no history of a machine: {&quot;fettle&quot;: 1, ...} is expected.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} is not the file the history speaks of: its content has changed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} is not there.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} is not a machine file; it was left as it is.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>There is no permission to read {0}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The file was opened for reading only.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>This machine is open in another window, here it can only be read.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>This file was written by a newer version of the program: what is understood of it can be read, nothing can be changed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>This file is damaged: it is left as it is, what can be read is shown and can be exported.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>There is no permission to write this file or its folder, it can only be read.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} was removed or replaced by another program: save a copy to go on.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} was changed by another program: open it again to go on.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} is being written by another program, the last entry was not taken: try again.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} could not be written, the last entry was not taken: {1}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The copy {0} cannot be made: {1}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} is already there; choose a name that is free.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} cannot be made: {1}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} is being written by another program; try again later.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} cannot be opened: {1}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>there is no way on from format {0}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} is of format {1} and could not be brought to format {2}, it is unchanged: {3}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Where it was read</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Unit</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Tolerances</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>From</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>To</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>⚠ Caution</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>There is no step {0}; the steps are: {1}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: a machine sheet has no field {1}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The stored result of {0}, run {1}, does not come out again from its readings.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} is sound; {1} of {2} results were computed again and agree.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} is not JSON: the text cannot be read from byte {1} on.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Standard input</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} cannot be written; choose a folder that can be written to.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: this build cannot draw; only .csv is possible.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The report is in {0}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>none of its critical items is ticked yet.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>this is a sound file; {0} needs a text table of its columns.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The sound file ends early: a part announces {0} bytes and has {1}; copy or record it again.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The sound file does not describe its format (no &quot;fmt &quot; part); record it again as a WAVE file of 16 or 24 bits.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The sound file holds no samples (no &quot;data&quot; part); record it again.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The sound file&apos;s description has {0} bytes; at least {1} are needed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The sound file&apos;s extended description is damaged or of an unknown kind; save it as PCM of 16 or 24 bits.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The sound file is compressed or of an unknown kind (format {0}); save it as PCM of 16 or 24 bits or as float of 32 bits.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The sound file has {0} channels; one or two are read.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The sound file names a rate of {0} samples a second; {1} to {2} are read.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The sound file contradicts itself: {0} channels of {1} bits take {2} bytes, it says {3}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The sound file ends in the middle of a sample: {0} bytes are no whole number of {1}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The sound file holds {0} samples; two or more are needed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The recording is {0} s long; {1} s at most are read. Cut it to the plucks.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>This is not a WAVE sound file; record or save as WAVE, PCM of 16 or 24 bits.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The sound file is of the kind {0}; save it as a plain WAVE file (RIFF).</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Sample {0} of the sound file is no number; record it again.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no target was approached from both sides</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: no target was approached from both sides. Reversal stays unknown, and R, E and A hold for one direction each.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Moves: all moves of {0} have the target {1} mm; targets along the whole travel are needed, five or more.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a target has one run from one side: its scatter is not known</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Deviations</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Deviations {0}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>target position</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>deviation, measured − target</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Enter moves to five targets or more, each approached from both sides five times.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Reversal {0}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Approach targets from both sides to see the reversal.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>reversal</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>none</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the sheet has a belt</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the sheet has a screw</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the sheet has {0}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} would be configured as {1} steps per mm, found are {2}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the sheet already has {0}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a pulley of {0} teeth instead of {1}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a belt of {0} mm pitch instead of {1}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a screw of {0} mm lead instead of {1}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a motor of {0}° a step instead of {1}°</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} microsteps instead of {1}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>does not apply to this motion</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: measured / commanded travel is {1}. Of the common parts only one fits: {2}. Look at the part before you change a number.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: measured / commanded travel is {1}. {2} pairs of parts would explain it: {3}. Fill in the drive on the machine sheet to strike some out.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: measured / commanded travel is {1}, and no single common part explains it. Check the reading, lost steps and a slipping pulley.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: the parts on the machine sheet need {1} steps per mm, {2} were found; the travel agrees with the sheet.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: the belt, pulley and motor on the sheet give {1} steps per mm, inside U of the measured {2}: the theoretical value is proposed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Moves: {0} moves of {1} are fewer than the {2} figures of a straight line with reversal; enter {2} or more.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Moves: the targets of {0} follow the direction of approach, so scale and reversal cannot be told apart; approach one target or more from both sides.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: the scale error {1} is not larger than its uncertainty: nothing calls for a change of the steps per mm.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the steps per mm as found are not known</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>x</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>y</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>z</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>one homing alone shows no scatter</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the homed position of {0},</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Reversal B</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Mean reversal</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Repeatability R</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Systematic deviation E</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Mean deviation M</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Accuracy A</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Measured / commanded</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Steps per mm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Homing, standard deviation</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Homing, range</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Parts that would explain it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Struck out</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Target</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Commanded position.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Measured</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Position from one datum that stays where it is.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Reading</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Indicator at one place after each homing.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Moves</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Five targets or more along the travel, each approached from both sides, five runs.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Homings</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The same place after each of ten homings or so.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>On a delta every motor moves every axis: scale and steps per mm of an axis do not apply to this motion. The other figures do.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Axis travel</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How far, how repeatably and with how much play each axis moves.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The axis moves while you measure: keep fingers and instruments out of its way.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Spectrum</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>frequency</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>density, loudest = 1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Choose a recording of a plucked belt to see its spectrum.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>harmonics</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} f</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>f {0} Hz</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Spectrum {0}, {1}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>what rings and dies away</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Frequencies</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>reading</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Enter plucks with their frequency, or choose recordings of plucked belts.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Recordings, row {0}: the samples are not evenly spaced about {1} s; a recording of one steady rate is needed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Recordings, row {0}: {1} samples a second do not reach {2} Hz; record at {3} or more, or search lower.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Recordings, row {0}: {1} s hold fewer than {2} periods of {3} Hz; record for {4} s or more, or search from a higher frequency.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Recordings, row {0}: {1} Hz is taken for the fundamental of {2}, but {3} Hz would explain the lines almost as well. Look at the spectrum and pluck again.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Recordings, row {0}: the fundamental of {1}, {2} Hz, is not heard itself; it follows from {3} harmonics.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Belt {0} has the spans {1} mm and {2} mm; one belt needs one span.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Belt</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>In a word: x, y, left, right.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>frequency reading</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Of the plucked span, by ear and tuner or any other means.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Span</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Between the tangent points; blank: the one span for all.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Sound</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Level</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A WAVE file, or a text of time and level: a few plucks, a second apart, in a quiet room.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Recordings, row {0}: {1} between {2} and {3} Hz. Pluck harder, nearer to the microphone, in a quiet room.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: the guard bands of 2 × {1} N fill the tolerance of {2} N; no reading could pass. Weigh the belt and pluck a longer span.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The span of {0} is {1} mm; {2} to {3} mm are wanted. A short span reads high, because a belt is stiff and no string; a long one flaps.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The tension of {0}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0},</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no recording of this belt holds a tone</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the spans of {0} and {1} differ, {2} and {3} mm: pluck equal spans</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} has {1} N and {2} has {3} N, {4} % apart: on crossed belts that pulls the gantry out of square. Even them out and pluck again.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The mass of the belt counts with {0}. Printed figures differ; weigh a known length and enter what its mass is uncertain by.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} % limit of error</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} g/m limit of error</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Free length between the tangent points, 150 to 400 mm; of all belts that have none of their own.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Belt mass</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>belt mass as typed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Of one metre at its full width. Weigh a known length of the same belt.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Plucks</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Frequencies read by other means; three or more of each belt.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Recordings</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Sound of a plucked belt; the step finds its frequency.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Tension the belt&apos;s or machine&apos;s maker asks for; blank: none is judged.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Share of the target.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Search from</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The fundamental in recordings is looked for from here.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Search to</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Search from {0} Hz to {1} Hz: to must be above from.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Belt tension</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How tight each belt is, from the note of a free span.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Power off and unplugged. Hold the motor by hand, keep fingers out of the pulleys.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Tension</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Difference of the two belts over their mean</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A power of two: microsteps or full-step angle differ from the sheet.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Count the teeth, or look at the lead, before you trust either number.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: {1} steps per mm as found, {2} from the parts on the sheet: a move of 100 mm would go {3} mm.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>It may have been adjusted by measuring.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the motor current is not known</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>it is not known whether the current is rms or peak</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>not on the machine sheet: {0}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: {1} A rms are {2} % of the rated {3} A, more than 85 % ({4} A rms): the motor gets hotter than its mount may bear.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: as found the travel goes to {1} mm, it ends at {2} mm: the carriage would be driven {3} mm into its end.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: as found the travel goes to {1} mm, it ends at {2} mm: {3} mm are not used.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: as found the bed ends at {1} mm, the plate ends at {2} mm: the nozzle would print and dive {3} mm beside it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} is {1} mm and {2} is {3} mm: the lower limit must be below the upper one.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>As found the bed has a radius of {0} mm, the plate one of {1} mm: the nozzle would print and dive {2} mm beside it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Above it the polymer tube down to the nozzle softens and gives off fumes.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The hot end is not made for more.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Magnets, adhesive and wiring of the bed are not made for more.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the acceleration is not known</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the travel is not known</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: a top speed of {1} mm/s at {2} mm/s² needs {3} mm from rest to rest, the travel is {4} mm: {5} mm/s is the most. If the speed is meant per minute, it is {6} mm/s.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The probe would touch at {0} = {1} mm, {2} mm beyond the bed: it finds nothing, and the nozzle dives on.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The probe would touch at {0}, {1} mm, {2} mm beyond the edge of a disc of radius {3} mm: it finds nothing, and the nozzle dives on.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>To touch at {0} = {1} mm with the tip {2} mm from the nozzle the carriage would have to go to {3} mm, {4} mm beyond its travel ({5} mm).</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the probe offset as found is not known</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>With the tip at {0}, {1} mm from the nozzle as found the probe reaches no part of the bed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bed and travel</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Enter bed and travel on the machine sheet, and what the controller lists.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>travel</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>travel as found</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>corners of the probing grid</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: the list says {1}, as found so far was {2}. The list counts.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Found, row {0}: {1} is {2} here and {3} in an earlier row; one of the two is needed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Travel from</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Travel to</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bed from</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bed to</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Probe offset</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Probing grid from</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Probing grid to</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Top speed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Shaper frequency</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Feed steps per mm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Flow factor</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pressure lead</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Retraction</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>As the controller lists it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>With its unit, if it is another one.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What it is; blank: not used.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What the controller lists, typed or pasted as name and value.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Configuration review</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Whether what the controller believes fits what is physically there.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Steps per mm of the parts</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Steps as found / expected</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Motor current, rms</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Motor current / rated</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Highest speed on the travel</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Limit of the hot end</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Limit of the bed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Drawn against speed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>speed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>drawn / commanded</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Enter draws with their speed: commanded length, mark before and after.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>all that was commanded</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Filament diameter</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>place</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>diameter</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Enter the filament&apos;s diameter at five places, each in two directions.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>one direction</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>across</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>nominal {0}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the filament&apos;s nominal diameter is not on the machine sheet</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The filament is {0} mm thick and not {1} mm: {2} % of flow. Enter the measured diameter where prints are prepared.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The filament&apos;s diameter</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} places were measured; five along a few metres show how the thickness wanders.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Diameter</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>In any direction.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Diameter across</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>At the same place, a quarter turn further.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Draws, row {0}: the mark is {1} mm from the inlet before and {2} mm after; after must be less than before.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The feeder slips with speed: {0} of the commanded length at {1} mm/s, {2} at {3} mm/s. Only the draws at {1} mm/s count. See to idler tension and nozzle; how much the hot end melts is measured in melt rate.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The drawn ratio</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>drawn / commanded,</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Slip was not looked for: that takes three draws or more at two speeds or more.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Commanded</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Length of filament commanded.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Mark before</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>From the feeder&apos;s inlet to the mark on the filament, before.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Mark after</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>From the inlet to the same mark, after.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Of the filament; two speeds or more show slip.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The filament weighs more after drying: {0} g before, {1} g after. Weigh the same things both times, before it takes up water again.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Before the figure is kept: idler tension bites without flattening the filament, the spool turns freely, the nozzle&apos;s bore is clear and of the size on the sheet.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The tube is seated at both ends and does not move in its fittings.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Draws</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Two speeds or more, three draws of each; 100 mm or more each time.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Filament diameters</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Five places along a few metres, each in two directions.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lot</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Of the filament, as printed on the spool.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Dried at</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Dried for</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Mass before drying</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Of spool and filament, or of a piece of filament alone.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Mass after drying</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Filament feed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How much filament the feeder draws for each step, and how thick it is.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Hot nozzle; gears that draw filament also draw fingers, hair and sleeves.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Drawn / commanded</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Ovality</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Mass lost by drying</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>time</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>first order with dead time</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>duty changes</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>on</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>swing</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>±1 °C</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Temperature</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>temperature</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Choose a log of time and temperature, with duty and target where the machine gives them.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Residuals</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>measured less fitted</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Choose the log of a step test.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no difference</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Duty</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>duty</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Choose a log that holds the duty.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Heating up by each rule</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A step test, or a typed gain, time constant and dead time, and a target show how each rule would heat up.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>fan on</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the log has no duty</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the log has no {0} s at a duty of 0.95 or more</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>at full duty there is a stretch without any rise</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>At full duty the temperature does not rise within {0} s. Look at heater, sensor and wiring before anything else.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No row of the log has a target above 0 °C; a heater that is on is needed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The log has {0} stretches of different targets; the longest counts, {1} °C from {2} s on.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the log shows less than 5 s at or below its target</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the temperature does not stay within ±1 °C</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>two rows or more are needed after settling</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the log ends too soon after settling</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The log ends {0} s after the temperature settled; {1} s are needed to judge.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>In {0} s the temperature does not come to stay within ±1 °C of its target for {1} s.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The log stays at its target of {0} °C for {1} s; 5 s or more are needed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Log, row {0}: {1} {2} is not between {3} and {4}. A duty in percent needs the unit % for its column.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The log has {0} rows; {1} or more are needed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Log, row {0}: the time {1} s does not come after {2} s; rows in rising time are needed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The log reaches {0} °C, above 0.95 of the {1} °C allowed: the test should have been broken off at {2} °C. Find out why nothing did.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The duty does not switch in the second half of the log; a relay test switches between two duties.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The {0} of the last four cycles differs by more than 10 %, from {1} to {2}: let the relay run until the swing is steady.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The heater is on for {0} of the time, not for 0.35 to 0.65.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The mean of {0} °C is more than 1 °C from the target of {1} °C.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The formula supposes an even swing. Choose the two duties evenly about the one that holds the target.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The swing of ±{0} °C must be wider than the half hysteresis of {1} °C, and the high duty of {2} above the low one of {3}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The heater is switched on {0} times in this log; four whole cycles, five times, are needed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>period</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>amplitude</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a heater without dead time has no ultimate point</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>SIMC</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Ziegler–Nichols</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Tyreus–Luyben</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>AMIGO</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>without a dead time this rule has no setting</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the simulated loop does not come to stay within ±1 °C</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: the smallest dip, {1} °C, of the rules that overshoot by 2 °C or less</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: every rule overshoots by more than 2 °C, this one least, {1} °C</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>there is no target to heat up to</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The target of {0} °C is not above the room&apos;s {1} °C; a higher one is needed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the heater cannot reach this target</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The duty before and after the step are both {0}; two different ones are needed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The duty stays at {0} throughout the log; one step of it is needed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The duty changes {0} times. Only the answer to the first change, at {1} s, is used; rows from {2} s on are left out.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Only {0} rows follow the step at {1} s; {2} or more are needed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The log shows {0} s before the step; with {1} s or more it could be seen that the start is steady.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Before the step the temperature drifts by {0} °C a minute. Gain and time constant take that for an answer: wait until it stands still, and repeat.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The temperature goes from {0} to {1} °C against a change of duty of {2}: heater or sensor do not belong together, or the heater came off. Switch off.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A change of duty of {0} moves the temperature by {1} °C only; {2} °C is the least that counts. The test failed: look at heater, sensor and wiring.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>This duty ends at {0} °C, above {1} °C = room + 0.9·(maximum − room). Take a smaller step.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The log follows the step for {0} s; the end is extrapolated. {1} s, dead time and three time constants, show it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Rows {0} s apart hardly show a dead time of {1} s. Log faster.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Neighbouring residuals resemble each other ({0}): the heater is not quite of first order, and the standard errors are too small.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the temperature does not follow the duty</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no heater answers like this</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Gain, known before</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Without a log: °C at full duty above the room.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Time constant, known before</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Dead time, known before</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Ultimate gain, known before</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Without a log: duty, 0 to 1, per °C.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Ultimate period, known before</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Highest temperature allowed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Blank: the machine sheet&apos;s for hot end and bed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Duty changes at</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Counted from the first row; needed when the log has no duty, like the next two.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Duty before the step</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Duty after the step</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Half hysteresis</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The relay switches at target plus and minus this.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Low duty of the relay</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Needed when the log has no duty, like the high one.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>High duty of the relay</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>To heat up to in the simulation, and of the log when it has no target itself.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Time constant wanted of the closed loop</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>For SIMC; blank: the dead time. Longer is calmer.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Controller output at full duty</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>255 or 100, say, when the controller&apos;s gains count in such steps.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Control period</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Time between two samples of the controller, when its gains count per sample.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Duty the fan takes</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Window of the runaway guard</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Blank: 15 s for the hot end, 90 s for bed and chamber.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The run is about {0}, the entry says {1}; the results are named after the entry.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A log and the numbers of an earlier test were both entered; the log counts.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Gain, duty per °C</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Integral time</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Derivative time</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Kp, duty 0 to 1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Ki, duty 0 to 1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Kd, duty 0 to 1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Kp at full scale</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Ki at full scale</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Kd at full scale</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Kp per sample</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Ki per sample</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Kd per sample</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Simulated overshoot</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Simulated settling time</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Simulated dip under the fan</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Gain, °C at full duty</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Time constant</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Dead time</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Ultimate gain, duty per °C</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Ultimate period</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Recommended rule</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Because</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Overshoot</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Settling time</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Mean error</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Standard deviation</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Peak to peak</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Drift</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Greatest fall below target</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Held within ±1 °C</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Slowest rise at full duty</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Rise a runaway guard may ask for</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Heater</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Hot end</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Chamber</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Blank: what the run is about.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Test</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Step of duty</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Relay</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Approach and hold</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Log</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Of the machine: time and temperature, with duty and target where it gives them.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A runaway guard must be on before any unattended run: the machine has to switch off by itself when the temperature does not follow the heater.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Heater control</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How a heater answers, and the control that brings it to its target and keeps it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Stay by the machine through the whole test, one hand at the switch. Break off at 0.95 of the highest temperature allowed. Hot metal burns at a touch.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Proportional gain</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Integral gain</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Derivative gain</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Checks: {0} is answered both yes and no; one answer is needed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Not in order: {0}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Transport locks and ties are out</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Parts are complete and bolts tight, against the list</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Diagonals of every frame face are measured and alike</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Gantry is parallel, both z ends at equal height</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Grub screws sit on flats and are locked</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Couplings are tight and not bottomed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Rails are clean and greased</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Wheels have no play and still turn by finger, if there are any</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Belt path is straight and rubs on no flange</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Cables and chains are free at all extremes of travel</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Crimps and ferrules are sound, no tinned strand is under a screw</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Not looked at yet: {0}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Diagonals, row {0}: the diagonal of {1} mm is not longer than the edge of {2} mm; a diagonal is longer than either edge.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: the diagonals differ by {1} mm, {2} mm over {3} mm are allowed. Loosen the corners, square the face and tighten crosswise.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Face</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>In a word: front, left, bottom.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>One diagonal</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Other diagonal</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Edge</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The face&apos;s longer edge; 1 mm per 500 mm of it is allowed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Diagonals, row {0}: {1} has an edge of {2} mm here and of {3} mm before; one face needs one.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Diagonals</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>face</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>difference of the diagonals per 500 mm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Enter the two diagonals and the longer edge of each face of the frame.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Axis {0} binds: {1} N at {2}, {3} N at {4}, {5} % of the mean apart. Look there for rails out of parallel, a bent screw, tight wheels or a rubbing cable.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Where along its travel, in a word or in mm; five places.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Force</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>pull scale</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>That just keeps the unpowered axis moving slowly.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>one place shows no binding</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the mean force is zero; a finer scale is needed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Axis {0} was pulled at {1} places; {2} along the travel are wanted.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Drag</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>force</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Enter the force that moves each axis by hand at five places along its travel.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>axis {0}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Checks</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Power off and unplugged. What the machine does not have is in order.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Of each face of the frame, corner to corner.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Motors without power: the force on a pull scale at five places of each axis.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>First thing of the day: start drying the filament; it takes hours.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Frame and mechanics</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Whether frame and moving parts are complete, square, tight and free.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Power off and unplugged. Moving parts pinch, and edges are sharp.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Checks answered</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Checks open</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Checks not in order</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Diagonals, one less the other</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Mean drag</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Drag, greatest less least over mean</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>not said</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: expected: {1}; observed: {2}. Switch off and mend it first.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Not tried: {0}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>fan turns, the right way</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>fan starts at low duty</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>emergency stop cuts the heaters</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>sensor unplugged cold gives a fault</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>something else</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>It is not proved yet that the emergency stop really cuts the heaters.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>It is not proved yet that a sensor unplugged cold gives a fault: a torn lead would heat without end.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: its own sensor rose by {1} °C, another by {2} °C. Sensors or heaters are swapped. Switch off: this heater is not under control.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: {1} °C in {2} s says nothing yet; {3} °C are expected within {4} s.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: its sensor rose by {1} °C in {2} s, less than {3} °C. Switch off at once: the heater is dead, or it heats and the sensor does not see it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>First rises</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Enter rises: start, end and seconds of a short heating.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>room thermometer</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>heated in steps of 50 °C</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>room ventilated</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>somebody stood by all the time</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no smoke, no smell of burning, no discolouring</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>terminals tightened again after the first heat cycle, cold and unplugged</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>nozzle tightened hot</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Sensors at rest, row {0}: {1} is there twice; one row a sensor is needed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: the sensor shows {1} °C cold, the room has {2} °C. Let the machine cool down; if it stays, sensor, lead or sensor setting is wrong.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The temperature of the room</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Runaway guard: it did not trip but a time of {0} s was entered; leave the time blank, or answer that it tripped.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The time to the trip</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the time to the trip was not entered</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the runaway guard has not tripped</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The runaway guard did not trip with the heater lead unplugged. Do not heat: a sensor that falls out would heat without end.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The runaway guard is not proved yet: heater lead unplugged cold with the mains off, then a target of 50 °C must trip.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Smoke or discolouring was seen at the first heat. Off, unplugged, and find the place before anything heats again.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>First heat, open: {0}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Sensors at rest</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>indicated</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Enter the room and what each sensor shows with everything cold.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>sensors</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What is tried</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Which</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Axis, fan or sensor, where there are several.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Expected</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Observed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Ok</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Sensor of</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Indicated</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Start</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>End</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Greatest rise of another sensor</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>In the same time.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Scatter at rest</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Standard deviation of the sensor before heating; blank: below 0.3 °C.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Window</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Time within which a rise must show; blank: hot end 15, others 90.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Devices</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>One row for each thing tried: what should happen, what did. Directions and switches by hand before any homing.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>With everything cold for some hours.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Runaway guard tripped</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Heater lead unplugged cold with the mains off, then a target of 50 °C.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Time to the trip</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>One heater at a time, from cold: has its own sensor moved, and more than the others?</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>First heat</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Power-up check</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Whether the machine does what it is told, cold and at its first heat.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>First motion and first heat: a hand on the stop, nobody else near, stay until it is cold again. Plug and unplug leads only with the mains off.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Faults</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Devices wrong</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Cold, less room</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Runaway guard trips after</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Rate</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Rise in the window</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Least rise</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Answered without initials or time: {0}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>mains lead and inlet whole, no strand bare</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>earth bond on every touchable metal part</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>strain relief on every moving and every mains lead</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>fuses present, of the right rating</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>heater and sensor clamped, leads relieved</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>guards and covers fitted</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>emergency stop in reach and working</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>smoke alarm in the room, tested</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>ventilation on</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>nobody leaves the first heat</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: not answered</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: not ok</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} of {1} items are open: {2}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>fuse or load was not entered</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: the load of {1} is above the fuse of {2}; the fuse opens in normal use. Do not fit a larger one without looking at the wire.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the table of wires runs from 0.14 to 16 mm²</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the cross-section was not entered</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the fuse was not entered</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: the fuse of {1} is above the {2} that {3} mm² carries; the wire would burn before the fuse opens</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Fuses and wires</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>cross-section</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>current</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Enter circuits with fuse, cross-section and load.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>what the wire carries</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>fuse</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>load</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: {1} from the resistance, {2} W rated.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Four times its rating: it is made for half of this voltage. Do not switch it on.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A quarter of its rating: it is made for twice this voltage and will not get warm.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the resistance of a ptc heater changes with its temperature; it is not judged</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the power of everything else on the supply was not entered</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Heaters and all else take {0}, more than 80 % ({1} W) of the supply&apos;s {2} W: it runs hot, sags or shuts down.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Heaters, row {0}: {1} is there twice; one row a heater is needed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: {1} to earth, {2} Ω allowed. A fault to this part would not blow the fuse; the part would be live. A qualified person mends it before power-up.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>earth bond: {0} reads {1}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>earth bond: {0} not decided</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Do not power up: {0}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Earth bond</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>resistance to earth</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Enter the resistance from the earth pin to each touchable metal part.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>parts</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A touchable metal part: frame, bed plate, supply case.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Resistance to earth</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>From the inlet&apos;s earth pin, unplugged, leads subtracted.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>cartridge</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>foil</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>copper trace</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>ptc</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Resistance</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Cold, unplugged, one lead off its terminal, read with a multimeter.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Voltage</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>At the heater; blank: the supply voltage of the machine sheet.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Rated power</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Working temperature</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>At which the rated power counts; a copper trace gains resistance up to there.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Fed from</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the supply</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the mains</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Circuit</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Fuse</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Wire</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Cross-section of the copper of the thinnest wire behind this fuse.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The most that flows for more than a moment.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Checklist</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Unplugged. Each item with initials and time.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Unplugged: from the inlet&apos;s earth pin to each touchable metal part.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Heaters</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Unplugged and cold: one row a heater.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Temperature of the heaters while they were measured.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Everything else on the supply</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Motors, fans, boards, lamps, at their most.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Circuits</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>One row for each fuse: what it protects.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Work on mains wiring is for a qualified person; local codes come before anything said here.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Safety and wiring</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Whether the machine may be switched on.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Unplug the machine and wait a minute before you open it. Work on mains wiring is for a qualified person under local codes.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Critical items open</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Items open</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Power, cold</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Power at working temperature</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Current, cold</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Power / rated</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Load of the supply</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Load / supply</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Wire carries</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Wire less fuse</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Fuse less load</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Reference against indication</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>reference</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Enter what was indicated and what the reference thermometer showed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>straight line</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Deviation</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>indicated − reference</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>NTC {0} Ω, B {1} K</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} with another bias resistor</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>indication of the controller</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>another NTC, by R25 and B</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>All points lie above {0} °C, where no tolerance is named.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The verdict counts points up to {0} °C, where the largest deviation is {1} °C; above no tolerance is named.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Points: one point gives no line; enter two or more, from room to working temperature.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Two points: U of the line holds the instruments alone, not the scatter. A third point would show it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the distance from the line,</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: the sensor was read with the curve &quot;{1}&quot; (RMS {2} °C), but &quot;{3}&quot; fits: RMS {4} °C.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>So does &quot;{0}&quot;.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Check the sensor&apos;s figures and the bias resistor before you change the configuration.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the configured bias resistor is not entered</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: RMS {1} °C</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>none fits better than the configured one</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Points, row {0}: {1} °C lies outside {2} … {3} °C, for which the curve &quot;{4}&quot; is known.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What the machine shows.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Reference</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What the reference thermometer shows at the same place.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Five steady temperatures or more, from room to working temperature.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Configured curve</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>By which the controller turns resistance into temperature; blank: as found.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Resistance at 25 °C</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>B in kelvin</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Configured bias resistor</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>In series with the sensor, as the controller counts it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Name the configured curve, and this step looks whether another one fits.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Temperature sensor</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How true the sensor of a heater reads, and which curve it really follows.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Hot parts burn at a touch. Stay with the machine while it heats.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Largest deviation</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Offset</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Slope</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Real / configured bias resistor</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bias resistor that would fit</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Curves that fit better</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Sensor curve</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The sound file has samples of {0} bits; whole numbers of 16, 24 or 32 bits or float of 32 bits are read.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: the position at some target</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: runs to some target from one side: {1}; ISO 230-2 takes {2}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: targets along the travel: {1}; ISO 230-2 takes {2} or more.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}, distance from the middle of the runs to the same target,</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Moves: the measured positions of {0} do not rise with its targets (ratio {1}); positions measured in the direction of the axis are needed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The point at {0} stands out from its neighbours by {1} mm: wipe the place and the probe tip, then touch it again.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} points stand out from their neighbours, most of all that at {1} by {2} mm: wipe the places and the probe tip, then touch them again.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Neighbours differ by more than 0.5 mm with the tilt removed (pairs: {0}), most of all {1} and {2} by {3} mm: look for a chip under the sheet or a sheet not seated.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Points that repeat another one exactly count once: {0} left out.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a crossed-belt motion has two belts; measured: {0}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: as found the travel begins at {1} mm, it can begin at {2} mm only: the carriage would be driven {3} mm into its end.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: as found the travel begins at {1} mm, it could begin at {2} mm: {3} mm are not used.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: as found the bed begins at {1} mm, the plate begins at {2} mm: the nozzle would print and dive {3} mm beside it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: as found up to {1} °C, the limit is {2} °C. {3}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Row {0}, {1} = {2}, may be &quot;{3}&quot;. If it is, choose it as the setting.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} of a file must be an object of columns.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} of a grid file must be a list of numbers.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} of a grid file must be true or false.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} is neither yes nor no; true, false, &quot;yes&quot; or &quot;no&quot; is needed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>row {0}, excluded: {1} is no reason; a text in quotes is needed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Motor current {0}: {1} A rms are more than the rated {2} A; the motor gets too hot.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Rows {0}: {1} {2} lie far from the others. They count; exclude a row with a reason if you know one.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}, row {1}: {2}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: an object {{id: value}} is needed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: {1} is {2}; a number or a text is needed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: the guard bands of 2 × {1} fill the tolerance of {2}; no reading could pass.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A {0} (limit of error {1}) would do.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>More readings would do.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Drawn and commanded length agree within the uncertainty: {0}. These draws give no reason to change the feed; more and longer ones tell smaller errors.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>there is no log</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The log lasts {0} s at this target and ends before the temperature settles; {1} s within ±1 °C are needed to judge.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The dead time of {0} s is not larger than its uncertainty, and every rule&apos;s gain hangs on it: nothing is simulated or recommended. Log faster.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the dead time is not known well enough</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The rules are simulated on a gain of {0} °C, the mean temperature above the room over the mean duty, with a time constant of {1} s and a dead time of {2} s, which swing as the relay found. A step test shows these surer.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Ku and Pu alone do not give the heater&apos;s gain, so the rules are not simulated and none is recommended. A step test, or a relay&apos;s log with its duty, does both.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Not in order: {0} ({1}).</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the difference on {0},</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The squareness of each of these faces ({0})</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The drag of an axis pulled at one place</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Steps: too few for a plateau and a falling line (rows: {0}, different flows: {1}); {2} different flows or more are needed, better 8.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Each of two values, room temperature and time to the trip,</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>sensor</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Printed ripples, row {0}: {1}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} A</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}, power</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A {0} would do.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the rated power was not entered and is not on the machine sheet</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the power of the supply is not on the machine sheet</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: {1} to earth is too near to the limit of {2} Ω for this instrument. {3}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A four-wire low-ohm tester with its leads subtracted would decide.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Clean and tighten the bond, and read again.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>part</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>As marked on the heater, at its own voltage; blank: that of the machine sheet.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Each resistance</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The largest deviation</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Points: all indications are {0} °C within the resolution; points from room to working temperature are needed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} of {1}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>it is damaged</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>there is not enough memory</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the file store reports failure {0}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a text in quotes</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a number or a text in quotes</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a list in brackets</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>an object in braces</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: {1} is needed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} is missing; {1} is needed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} is not a field of a history; possible are here: {1}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: {1} is not one of the words: {2}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>machine.tolerances.{0}: two numbers are needed, [lower end, upper end]; null leaves an end open.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>machine.name is missing; a text in quotes is needed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Could not be read in full: {0}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Could not be understood in part: {0}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the machine sheet</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the settings as found</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the instruments</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the tolerances</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the part changes</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the sessions</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the step records</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the settings as left</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the marks</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the results</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The history is in {0}; sessions: {1}, step records: {2}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The history is in {0}, its files beside it: {1}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} is damaged; export what can be read, and go on with a copy made earlier.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} holds a number no program can count with: {1}; numbers up to 1e308 are possible.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A verb is needed, one of: {0}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>There is no verb {0}; the verbs are: {1}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Blocked by {0}: {1}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no accepted result says that its critical items are closed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>critical items still open: {0}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>faults found there: {0}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Moves, row {0}: direction 0 is not possible; 1 for a target approached towards plus, -1 for one approached towards minus.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>mean, towards plus</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>mean, towards minus</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>±2 s, towards plus</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>±2 s, towards minus</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>mean of both directions</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} {1} mm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>reversal, towards plus − towards minus</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Scale error, measured / commanded − 1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>1: the target was approached towards plus; -1: towards minus.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>tension</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Enter span and mass of the belt and its plucks to see how tight it is.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} % of their mean</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>target {0} N ± {1} %</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Allowed either side, share of target</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>travel, as found the same</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&quot;{0}&quot; is none of {1}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>row {0}, {1}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>; and {0} more</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Without a setting, and so not used: {0}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>As found, {0}: {1}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Found, row {0}, {1}: {2}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Faults and cautions</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Tip reaches the bed from x</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Tip reaches the bed to x</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Tip reaches the bed from y</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Tip reaches the bed to y</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>±U</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>row {0}, column {1}: {2}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Motor current {0}: say whether the {1} A are rms or peak.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>not counted: faster, slips</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>mean of each speed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Slip, share of what the slowest speed draws</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Flow above nominal / nominal</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>target {0} °C</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>settled at {0} s</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Departure from target</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>temperature less target</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Choose the log of an approach to a target.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>mean over 5 s</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>limit {0} °C</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>break off at {0} °C</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No rule&apos;s simulated loop settles, so none is recommended. A longer time constant wanted of the closed loop makes SIMC calmer.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No settings are proposed yet: enter the target, and each rule is simulated up to it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>At full duty this heater ends at {0} °C and never reaches {1} °C. A lower target gives settings.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>This test shows how the control holds its target; a step or a relay test gives settings for it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>readings</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>mean</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>limit {0} mm per 500 mm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>limit {0} mm³/s</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>safe {0} mm³/s</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No line size is entered: what print speeds the flow allows is not known, and the chart has no axis of print speed. Enter width and height of a line.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Margin, share of the limit</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Delivered / commanded at low flow</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>room {0} °C</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>allowed {0} … {1} °C</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>lands {0} mm from where it is planned</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>planned points</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>landing points</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>landing points in the margin</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>points out of reach</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>points off the bed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>touch marks</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>density, divided by the excitation</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: all directions</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>density</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>frequency of a mode</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>vibration left, share of that without shaper</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: shaper frequency</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>frequency of the shaper</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>vibration left at worst, share of that without shaper</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: shapers compared</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>acceleration limit</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>acceleration</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>time after the blow</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Vibration left at worst / without shaper</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Allowance, share of frequency</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Vibration that may be left, share</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>limit {0} Ω</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>other bias resistor</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>limit {0} °C, to 250 °C</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a file taken in is larger than 1 GB</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the file ends in the middle of a page</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The file {0} is damaged: its readings are lost; what was computed of it ({1}) stays but cannot be computed again.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>These files are damaged and their readings lost: {0}; what was computed of them stays but cannot be computed again.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a number of 0 or more</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: a SHA-256 of 64 hexadecimal digits in lower case is needed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The file {0} in {1} is damaged.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The file {0} is not in {1}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The file {0} in {1} cannot be read now; try again later.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0}: accepted: an object {{step: {{id: number or text}}}} is needed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Not all files in {0} could be read for the check; try again later.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{0} takes other words than these; {0} --help names them.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>axis moves the right way</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>home switch answers</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>first homing, from mid travel</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>± of the reading</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>fettle::Text</name>
    <message>
        <source>There is not enough memory for this.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>fettle::ui::HeadlineWords</name>
    <message>
        <source>1 fault</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1 faults</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>main</name>
    <message>
        <source>A commissioning bench for filament printers.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>machine file to open</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>light, dark, or as the desktop</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>step to show first</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>size of the window, for pictures</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>leave once the window is painted, for timing</source>
        <translation type="unfinished"></translation>
    </message>
</context>
</TS>
