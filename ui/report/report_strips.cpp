#include "ui/report/report_strips.h"

#include <QPainter>
#include <algorithm>
#include <iterator>

#include "core/measure/text.h"
#include "core/report/report_words.h"
#include "ui/charts/chart_scene.h"
#include "ui/report/report_tables.h"
#include "ui/theme/palette.h"

namespace fettle::ui {
namespace {

/// Height of a chart over its width: pictures of the bed are as wide as deep.
double shapeOf(const Chart& chart) {
  const bool isBed = chart.kind == ChartKind::bedPlan || chart.kind == ChartKind::heightMap;
  return isBed ? 0.62 : 0.46;
}

const QColor& colourOf(Severity severity) {
  const Palette& palette = Palette::print();
  switch (severity) {
    case Severity::fault:
      return palette.fault;
    case Severity::caution:
      return palette.caution;
    case Severity::note:
      break;
  }
  return palette.text;
}

class Builder {
 public:
  Builder(double width, const ReportType& type) : m_width(width), m_type(type) {}

  void operator()(const Heading& heading) {
    constexpr double spaces[] = {0, 16, 10, 7};
    const auto level = static_cast<std::size_t>(std::clamp(heading.level, 1, 4) - 1);
    RowLook look = plain(spaces[level]);
    look.withNext = true;
    if (level == 1) {
      look.rule = m_palette.text;
      look.ruleWidth = m_type.points(0.75);
    }
    const QColor& colour = level == 3 ? m_palette.dim : m_palette.text;
    add({cell(heading.text, 0, m_type.headings[level], colour)}, look);
  }

  void operator()(const Paragraph& paragraph) {
    add({cell(paragraph.text, 0, m_type.body, paragraph.dim ? m_palette.dim : m_palette.text)}, plain(4));
  }

  void operator()(const Caution& caution) {
    const std::string head = Text::tr("⚠ Caution");
    RowLook look = plain(5);
    look.padding = m_type.points(3);
    look.withNext = true;  // it stands before what it warns of
    look.ground = m_palette.cautionGround;
    look.bar = m_palette.caution;
    ReportCell words = cell(head + "  " + caution.text, 8, m_type.body, m_palette.text);
    words.width -= m_type.points(6);
    words.boldLetters = static_cast<int>(QString::fromStdString(head).size());
    add({words}, look);
  }

  void operator()(const KeyValues& facts) { addFacts(m_strips, facts, m_width, m_type); }

  void operator()(const ReportTable& table) { addTable(m_strips, table, m_width, m_type); }

  void operator()(const Finding& finding) {
    ReportCell word = cell(severityText(finding.severity), 0, m_type.bold, colourOf(finding.severity));
    word.width = m_type.points(60);
    add({word, cell(finding.text, 62, m_type.body, m_palette.text)}, plain(3));
  }

  void operator()(const Chart& chart) {
    RowLook look = plain(9);
    look.withNext = true;
    add({cell(chart.title, 0, m_type.bold, m_palette.text)}, look);
    Strip picture;
    picture.before = m_type.points(2);
    picture.height = m_width * shapeOf(chart);
    picture.paint = [&chart, width = m_width, height = picture.height](QPainter& painter, double y) {
      paintChart(painter, QRectF(0, y, width, height), chart, Palette::print());
    };
    m_strips.push_back(std::move(picture));
  }

  void operator()(const PageBreak&) { m_breakBefore = true; }

  std::vector<Strip> take() { return std::move(m_strips); }

  /// Adds one block, at the top of a page when a page break stood before it.
  void addBlock(const ReportBlock& block) {
    const std::size_t at = m_strips.size();
    const bool isBreak = std::holds_alternative<PageBreak>(block);
    std::visit(*this, block);
    const auto* words = std::get_if<Paragraph>(&block);
    if (m_afterHeading && words && words->dim && at < m_strips.size()) {
      m_strips.back().withNext = true;  // explains the heading, and is not what stands below it
    }
    m_afterHeading = std::holds_alternative<Heading>(block);
    if (!isBreak && m_breakBefore && at < m_strips.size()) {
      m_strips[at].newPage = true;
      m_breakBefore = false;
    }
  }

 private:
  RowLook plain(double before) const {
    RowLook look;
    look.before = m_type.points(before);
    look.right = m_width;
    return look;
  }

  ReportCell cell(const std::string& text, double left, const QFont& font, const QColor& colour) const {
    const double x = m_type.points(left);
    return {QString::fromStdString(text), x, m_width - x, font, colour};
  }

  void add(const std::vector<ReportCell>& cells, const RowLook& look) {
    auto row = stripsOfRow(cells, look, m_type);
    std::move(row.begin(), row.end(), std::back_inserter(m_strips));
  }

  double m_width;
  const ReportType& m_type;
  const Palette& m_palette = Palette::print();
  std::vector<Strip> m_strips;
  bool m_breakBefore = false;
  bool m_afterHeading = false;
};

}  // namespace

std::vector<Strip> stripsOf(const Report& report, double width, const ReportType& type) {
  Builder builder(width, type);
  for (const auto& block : report.blocks) {
    builder.addBlock(block);
  }
  return builder.take();
}

}  // namespace fettle::ui
