#include "ui/report/report_html.h"

#include "core/measure/text.h"
#include "ui/charts/chart_export.h"
#include "ui/theme/palette.h"

namespace fettle::ui {
namespace {

QString escaped(const std::string& text) {
  return QString::fromStdString(text).toHtmlEscaped().replace('\n', "<br>");
}

QString html(const Heading& heading) {
  return QStringLiteral("<h%1>%2</h%1>").arg(heading.level).arg(escaped(heading.text));
}

QString html(const Paragraph& paragraph) {
  const Palette& palette = Palette::print();
  switch (paragraph.tone) {
    case Paragraph::Tone::plain:
      return QStringLiteral("<p>%1</p>").arg(escaped(paragraph.text));
    case Paragraph::Tone::dim:
      return QStringLiteral("<p style='color:%1'>%2</p>").arg(palette.dim.name(), escaped(paragraph.text));
    case Paragraph::Tone::caution:
      break;
  }
  return QStringLiteral("<p style='color:%1; background:%2'><b>⚠</b> %3</p>")
      .arg(palette.caution.name(), palette.cautionGround.name(), escaped(paragraph.text));
}

QString html(const ReportTable& table) {
  QString text = QStringLiteral("<table border='1' cellspacing='0' cellpadding='3'><thead><tr>");
  for (const auto& column : table.columns) {
    text += QStringLiteral("<th align='%1'>%2</th>")
                .arg(column.figures ? "right" : "left", escaped(column.head));
  }
  text += QStringLiteral("</tr></thead><tbody>");
  for (const auto& row : table.rows) {
    text += QStringLiteral("<tr>");
    for (std::size_t i = 0; i < row.cells.size(); ++i) {
      const bool struck = row.struck && i + 1 < row.cells.size();
      const bool figures = i < table.columns.size() && table.columns[i].figures;
      const QString cell = escaped(row.cells[i]);
      text += QStringLiteral("<td align='%1'>%2</td>")
                  .arg(figures ? "right" : "left", struck ? "<s>" + cell + "</s>" : cell);
    }
    text += QStringLiteral("</tr>");
  }
  return text + QStringLiteral("</tbody></table>");
}

QString html(const Finding& finding) {
  const std::string word = finding.severity == Severity::fault     ? Text::tr("✕ Fault")
                           : finding.severity == Severity::caution ? Text::tr("! Caution")
                                                                   : Text::tr("i Note");
  return QStringLiteral("<p><b>%1:</b> %2</p>").arg(escaped(word), escaped(finding.text));
}

QString html(const Chart&) {
  return {};
}

// The look of the page is the print palette's; only sizes are said here.
const char* const pageStyle =
    "body{font-family:sans-serif;font-size:10pt;max-width:60em;margin:2em auto;padding:0 1em}"
    "table{border-collapse:collapse;margin:.6em 0}th,td{padding:.15em .5em;vertical-align:top}"
    "thead{display:table-header-group}figure{margin:1em 0;break-inside:avoid}"
    "h2{border-top:1px solid;padding-top:.6em}figcaption{font-weight:bold}";

}  // namespace

QString htmlOf(const ReportBlock& block) {
  return std::visit([](const auto& known) { return html(known); }, block);
}

QString htmlPage(const Report& report) {
  QString body;
  for (const auto& block : report.blocks) {
    if (const auto* chart = std::get_if<Chart>(&block)) {
      QString drawing = QString::fromUtf8(chartAs(ChartFormat::svg, *chart, QSize(720, 420)));
      drawing.remove(0, std::max<qsizetype>(0, drawing.indexOf("<svg")));
      body += QStringLiteral("<figure><figcaption>%1</figcaption>%2</figure>\n")
                  .arg(escaped(chart->title), drawing);
    } else {
      body += htmlOf(block) + '\n';
    }
  }
  return QStringLiteral(
             "<!DOCTYPE html>\n<html lang='en'><head><meta charset='utf-8'><title>%1: %2</title>"
             "<style>%3</style></head><body>\n%4<p>%5, %6</p></body></html>\n")
      .arg(escaped(report.title), escaped(report.machine), QLatin1String(pageStyle), body,
           escaped(report.program), escaped(report.date));
}

}  // namespace fettle::ui
