#include "ui/report/report_row.h"

#include <QFontMetricsF>
#include <QPaintDevice>
#include <QPainter>
#include <QRegularExpression>
#include <QTextLayout>
#include <algorithm>
#include <memory>

#include "ui/theme/look.h"

namespace fettle::ui {
namespace {

constexpr double pointsPerInch = 72;
constexpr std::size_t linesKept = 12;

QFont sized(double points, bool isBold) {
  QFont font = fontsOf().base;
  font.setPointSizeF(points);
  font.setBold(isBold);
  return font;
}

/// A cell broken into lines.
struct LaidCell {
  ReportCell cell;
  std::shared_ptr<QTextLayout> layout;
};

/// Breaks lines between words only, where the words fit: never behind the slash of a unit.
QString brokenIntoLines(QString text, const QFont& font, double width, const QPaintDevice* device) {
  const QFontMetricsF metrics(font, device);
  text.remove('\r').replace('\n', QChar::LineSeparator);
  qsizetype begin = 0, lastSpace = -1;
  for (qsizetype i = 0; i <= text.size(); ++i) {
    const bool ends = i == text.size() || text[i] == QChar::LineSeparator;
    if (!ends && text[i] != ' ') {
      continue;
    }
    if (lastSpace >= begin && metrics.horizontalAdvance(text.mid(begin, i - begin)) > width) {
      text[lastSpace] = QChar::LineSeparator;
      begin = lastSpace + 1;
    }
    lastSpace = i;
    if (ends) {
      begin = i + 1;
    }
  }
  return text;
}

LaidCell laid(const ReportCell& cell, const ReportType& type) {
  QFont widest = cell.font;
  widest.setBold(cell.font.bold() || cell.boldLetters > 0);
  auto layout = std::make_shared<QTextLayout>(brokenIntoLines(cell.text, widest, cell.width, type.device),
                                              cell.font, type.device);
  QTextOption option(cell.atRight ? Qt::AlignRight : Qt::AlignLeft);
  option.setWrapMode(QTextOption::WrapAtWordBoundaryOrAnywhere);
  option.setUseDesignMetrics(true);
  layout->setTextOption(option);
  if (cell.boldLetters > 0) {
    QTextLayout::FormatRange range;
    range.start = 0;
    range.length = cell.boldLetters;
    range.format.setFontWeight(QFont::Bold);
    layout->setFormats({range});
  }
  layout->beginLayout();
  for (QTextLine line = layout->createLine(); line.isValid(); line = layout->createLine()) {
    line.setLineWidth(cell.width);
  }
  layout->endLayout();
  return {cell, layout};
}

double heightOfLine(const std::vector<LaidCell>& cells, std::size_t line) {
  double height = 0;
  for (const auto& [cell, layout] : cells) {
    if (static_cast<int>(line) < layout->lineCount()) {
      height = std::max(height, layout->lineAt(static_cast<int>(line)).height());
    }
  }
  return height;
}

void paintLine(QPainter& painter, const std::vector<LaidCell>& cells, int line, double y) {
  for (const auto& [cell, layout] : cells) {
    if (line < layout->lineCount()) {
      painter.setPen(cell.colour);
      layout->lineAt(line).draw(&painter, QPointF(cell.x, y));
    }
  }
}

void paintGround(QPainter& painter, const RowLook& look, double barWidth, const QRectF& strip) {
  if (look.ground.isValid()) {
    painter.fillRect(strip, look.ground);
  }
  if (look.bar.isValid()) {
    painter.fillRect(QRectF(strip.left(), strip.top(), barWidth, strip.height()), look.bar);
  }
}

}  // namespace

QString keptTogether(const std::string& text) {
  static const QRegularExpression apart(QStringLiteral(
      "(?<=\\d) (?=[^\\s\\d±(…,;][^\\s,;]{0,8}(?:[,;]|$))|(?<=±) |(?<=\\d) (?=%)|(?<=^[^\\w\\s]) "));
  return QString::fromStdString(text).replace(apart, QString(QChar::Nbsp));
}

ReportType::ReportType(const QPaintDevice& onDevice)
    : device(&onDevice),
      point(onDevice.logicalDpiY() / pointsPerInch),
      body(sized(9, false)),
      bold(sized(9, true)),
      table(sized(8.5, false)),
      tableHead(sized(8.5, true)),
      margin(sized(8, false)),
      headings{sized(17, true), sized(13, true), sized(10.5, true), sized(9, true)} {}

double ReportType::widthOf(const QString& text, const QFont& font) const {
  const QFontMetricsF metrics(font, device);
  double width = 0;
  for (const auto& line : text.split('\n')) {
    width = std::max(width, metrics.horizontalAdvance(line));
  }
  return width;
}

double ReportType::longestWord(const QString& text, const QFont& font) const {
  QString words = text;
  return widthOf(words.replace(' ', '\n'), font);
}

std::vector<Strip> stripsOfRow(const std::vector<ReportCell>& cells, const RowLook& look,
                               const ReportType& type) {
  auto laidCells = std::make_shared<std::vector<LaidCell>>();
  std::size_t lines = 1;
  for (const auto& cell : cells) {
    laidCells->push_back(laid(cell, type));
    lines = std::max(lines, static_cast<std::size_t>(laidCells->back().layout->lineCount()));
  }
  std::vector<Strip> strips(lines);
  for (std::size_t i = 0; i < lines; ++i) {
    const bool isFirst = i == 0, isLast = i + 1 == lines;
    const double above = isFirst ? look.padding : 0;
    const double height = above + heightOfLine(*laidCells, i) + (isLast ? look.padding : 0);
    const double rule = isLast && look.rule.isValid() ? look.ruleWidth : 0;
    strips[i].before = isFirst ? look.before : 0;
    strips[i].height = height + rule;
    strips[i].withNext = isLast ? look.withNext : lines <= linesKept || isFirst || i + 2 == lines;
    strips[i].paint = [=, barWidth = type.points(2)](QPainter& painter, double y) {
      paintGround(painter, look, barWidth, {look.left, y, look.right - look.left, height});
      paintLine(painter, *laidCells, static_cast<int>(i), y + above);
      if (rule > 0) {
        painter.fillRect(QRectF(look.left, y + height, look.right - look.left, rule), look.rule);
      }
    };
  }
  return strips;
}

}  // namespace fettle::ui
