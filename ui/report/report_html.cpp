#include "ui/report/report_html.h"

#include <QRegularExpression>

#include "core/measure/text.h"
#include "core/report/report_words.h"
#include "ui/charts/chart_export.h"
#include "ui/theme/palette.h"

namespace fettle::ui {
namespace {

QString escaped(const std::string& text) {
  return QString::fromStdString(text).toHtmlEscaped().replace('\n', QLatin1String("<br>"));
}

/// A drawing inside a page: without its XML head, and with ids that no other drawing of the page has.
QString inlineSvg(const Chart& chart, int number) {
  constexpr QSize size(720, 420);
  QString drawing = QString::fromUtf8(chartAs(ChartFormat::svg, chart, size));
  drawing.remove(0, std::max<qsizetype>(0, drawing.indexOf(QLatin1String("<svg"))));
  const QString own = QStringLiteral("\\1chart%1-").arg(number);
  drawing.replace(QRegularExpression(QStringLiteral("(\\bid=\"|url\\(#|href=\"#)")), own);
  return drawing;
}

class HtmlWriter {
 public:
  QString operator()(const Heading& heading) {
    return QStringLiteral("<h%1>%2</h%1>").arg(QString::number(heading.level), escaped(heading.text));
  }

  QString operator()(const Paragraph& paragraph) {
    return QStringLiteral("<p%1>%2</p>")
        .arg(paragraph.dim ? QStringLiteral(" class=\"dim\"") : QString(), escaped(paragraph.text));
  }

  QString operator()(const Caution& caution) {
    return QStringLiteral("<p class=\"caution\"><b>%1</b> %2</p>")
        .arg(escaped(Text::tr("⚠ Caution")), escaped(caution.text));
  }

  QString operator()(const KeyValues& facts) {
    QString text = QStringLiteral("<dl>");
    for (const auto& [name, value] : facts.pairs) {
      text += QStringLiteral("<div><dt>%1</dt><dd>%2</dd></div>").arg(escaped(name), escaped(value));
    }
    return text + QStringLiteral("</dl>");
  }

  QString operator()(const ReportTable& table) {
    QString text = QStringLiteral("<div class=\"wide\"><table><thead><tr>");
    for (const auto& column : table.columns) {
      text += QStringLiteral("<th%1 scope=\"col\">%2</th>").arg(side(column), escaped(column.head));
    }
    text += QStringLiteral("</tr></thead><tbody>");
    for (const auto& row : table.rows) {
      text += QStringLiteral("<tr>");
      for (std::size_t i = 0; i < row.cells.size(); ++i) {
        const QString cell = escaped(row.cells[i]);
        const bool isStruck = row.struck && i + 1 < row.cells.size();
        text += QStringLiteral("<td%1>%2</td>")
                    .arg(side(table.columns[i]), isStruck ? "<s>" + cell + "</s>" : cell);
      }
      text += QStringLiteral("</tr>\n");
    }
    return text + QStringLiteral("</tbody></table></div>");
  }

  QString operator()(const Finding& finding) {
    return QStringLiteral("<p class=\"%1\"><b>%2</b> %3</p>")
        .arg(QString::fromStdString(severityKey(finding.severity)), escaped(severityText(finding.severity)),
             escaped(finding.text));
  }

  QString operator()(const Chart& chart) {
    return QStringLiteral("<figure><figcaption>%1</figcaption>%2</figure>")
        .arg(escaped(chart.title), inlineSvg(chart, ++m_charts));
  }

  QString operator()(const PageBreak&) { return QStringLiteral("<div class=\"page\"></div>"); }

 private:
  static QString side(const ReportTable::Column& column) {
    return column.figures ? QStringLiteral(" class=\"figures\"") : QString();
  }

  int m_charts = 0;
};

// As printed, on any screen.
const char* const pageStyle = R"(
body { font: 10pt/1.4 sans-serif; color: @text; background: @ground; max-width: 62em; margin: 2em auto;
  padding: 0 1em; }
h2 { border-bottom: 1px solid @text; margin: 2em 0 .6em; }
h3 { margin: 1.6em 0 .4em; } h4 { margin: 1.2em 0 .3em; color: @dim; }
h1, h2, h3, h4, figcaption { break-after: avoid; }
.dim, dt, s { color: @dim; }
.caution { padding: .4em .7em; } p.caution { background: @cautionGround; border-left: 3px solid @caution; }
.fault b { color: @fault; }
dl { columns: 2 20em; margin: .4em 0; } dl div { display: flex; gap: .8em; break-inside: avoid; }
dt { flex: 0 0 42%; } dd { margin: 0; overflow-wrap: anywhere; }
.wide { overflow-x: auto; }
table { border-collapse: collapse; margin: .4em 0 1em; }
th { text-align: left; border-bottom: 1px solid @text; } td { border-bottom: 1px solid @line; }
th, td { padding: .15em 1em .15em 0; vertical-align: top; }
.figures { text-align: right; font-variant-numeric: tabular-nums; }
thead { display: table-header-group; } tr, figure { break-inside: avoid; }
figure { margin: 1em 0; } figcaption { font-weight: bold; } svg { max-width: 100%; height: auto; }
footer { border-top: 1px solid @line; margin-top: 3em; color: @dim; }
@media print { body { max-width: none; margin: 0; padding: 0; } .page { break-before: page; } }
)";

QString styleSheet() {
  const Palette& palette = Palette::print();
  QString sheet = QString::fromLatin1(pageStyle);
  const std::pair<const char*, const QColor&> colours[] = {{"@cautionGround", palette.cautionGround},
                                                           {"@caution", palette.caution},
                                                           {"@ground", palette.ground},
                                                           {"@text", palette.text},
                                                           {"@dim", palette.dim},
                                                           {"@line", palette.line},
                                                           {"@fault", palette.fault}};
  for (const auto& [name, colour] : colours) {
    sheet.replace(QLatin1String(name), colour.name());
  }
  return sheet;
}

}  // namespace

QString htmlPage(const Report& report) {
  const QString title =
      escaped(report.machine.empty() ? report.title : report.title + ": " + report.machine);
  const QString origin = escaped(report.date + (report.date.empty() ? "" : " · ") + report.program);
  QString page = QStringLiteral(
                     "<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\">"
                     "<meta name=\"viewport\" content=\"width=device-width\"><title>%1</title>"
                     "<style>%2</style></head><body>\n")
                     .arg(title, styleSheet());
  HtmlWriter writer;
  for (const auto& block : report.blocks) {
    page += std::visit(writer, block) + '\n';
  }
  return page + QStringLiteral("<footer>%1</footer></body></html>\n").arg(origin);
}

}  // namespace fettle::ui
