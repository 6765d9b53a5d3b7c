#include "ui/report/report_tables.h"

#include <QRegularExpression>
#include <algorithm>
#include <cmath>
#include <numeric>
#include <optional>

#include "ui/theme/palette.h"

namespace fettle::ui {
namespace {

constexpr double gap = 10;             // points between columns
constexpr double longestKept = 150;    // points of a word that is not broken
constexpr double spaceAbove = 4;       // points
constexpr double rowPadding = 1.5;     // points
constexpr double longestName = 0.4;    // part of a fact's width that its name may take
constexpr std::size_t longTable = 24;  // rows, half a page: beside itself it takes less paper
constexpr std::size_t mostBeside = 4;  // times, more are hard to follow with the eye
constexpr qsizetype shortWord = 6;     // letters
constexpr std::size_t rowsBelow = 2;   // rows kept below a head, and at the end of a table

/// Widths of a column: of its longest word and of its longest text.
struct Extent {
  double least = 0, wished = 0;
};

/// Decimals of a plain number; nothing of any other text.
std::optional<qsizetype> decimalsIn(const std::string& text) {
  static const QRegularExpression number(QStringLiteral("^[-\u2212]?\\d+(?:\\.(\\d+))?$"));
  const auto match = number.match(QString::fromStdString(text));
  return match.hasMatch() ? std::optional(match.capturedLength(1)) : std::nullopt;
}

/// The most decimals of each column of numbers; 0 where points need not stand below each other.
std::vector<qsizetype> mostDecimals(const ReportTable& table) {
  std::vector<qsizetype> most(table.columns.size(), 0);
  for (std::size_t i = 0; i < most.size(); ++i) {
    for (const auto& row : table.rows) {
      most[i] = table.columns[i].figures ? std::max(most[i], decimalsIn(row.cells[i]).value_or(0)) : 0;
    }
  }
  return most;
}

/// What a number lacks to the decimals of its column, as wide as it is left blank.
QString lackingDecimals(const std::string& text, qsizetype most) {
  const auto decimals = decimalsIn(text);
  return !decimals || *decimals == most ? QString()
                                        : (*decimals == 0 ? "." : "") + QString(most - *decimals, '0');
}

std::vector<Extent> extentsOf(const ReportTable& table, const std::vector<qsizetype>& most,
                              const ReportType& type) {
  std::vector<Extent> extents(table.columns.size());
  const double limit = type.points(longestKept);
  const auto widen = [&](Extent& extent, const QString& text, const QFont& font) {
    extent.wished = std::max(extent.wished, type.widthOf(text, font));
    extent.least = std::max(extent.least, std::min(limit, type.longestWord(text, font)));
  };
  for (std::size_t i = 0; i < extents.size(); ++i) {
    widen(extents[i], keptTogether(table.columns[i].head), type.tableHead);
    for (const auto& row : table.rows) {
      // Figures and what belongs to them ("31.4 ± 0.2 mm") stay in one line where that is possible.
      widen(extents[i], keptTogether(row.cells[i]) + lackingDecimals(row.cells[i], most[i]), type.table);
    }
    extents[i].least = std::ceil(extents[i].least) + 1;
    extents[i].wished = std::ceil(extents[i].wished) + 1;
  }
  return extents;
}

/// The least widths, and what is left shared evenly among those that wish for more. Where even the least
/// do not fit, each gives way in proportion.
std::vector<double> widthsOf(const std::vector<Extent>& extents, double room) {
  std::vector<double> widths;
  double left = room;
  for (const auto& extent : extents) {
    widths.push_back(extent.least);
    left -= extent.least;
  }
  if (left < 0) {
    for (auto& width : widths) {
      width *= room / (room - left);
    }
    return widths;
  }
  std::vector<std::size_t> order(extents.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  const auto wish = [&](std::size_t i) { return extents[i].wished - extents[i].least; };
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return wish(a) < wish(b); });
  for (std::size_t i = 0; i < order.size(); ++i) {
    const double share = std::min(wish(order[i]), left / static_cast<double>(order.size() - i));
    widths[order[i]] += share;
    left -= share;
  }
  return widths;
}

/// The columns from one to before another, behind the first one.
ReportTable part(const ReportTable& table, std::size_t from, std::size_t to) {
  ReportTable some;
  const auto pick = [&](const auto& all) {
    std::decay_t<decltype(all)> picked{all.front()};
    picked.insert(picked.end(), all.begin() + static_cast<std::ptrdiff_t>(from),
                  all.begin() + static_cast<std::ptrdiff_t>(to));
    return picked;
  };
  some.columns = pick(table.columns);
  for (const auto& row : table.rows) {
    some.rows.push_back({pick(row.cells), row.struck});
  }
  return some;
}

/// The first columns of parts that fit a width by the least widths of their columns, and hold no more
/// columns than `most` besides the first.
std::vector<std::size_t> beginnings(const std::vector<Extent>& extents, double width, double between,
                                    std::size_t most) {
  std::vector<std::size_t> begins;
  double used = width;
  for (std::size_t i = 1; i < extents.size(); ++i) {
    const double more = extents[i].least + between;
    if (begins.empty() || used + more > width || i - begins.back() == most) {
      begins.push_back(i);
      used = extents[0].least;
    }
    used += more;
  }
  return begins;
}

/// A table parted evenly where its columns do not fit side by side.
std::vector<ReportTable> fittingParts(const ReportTable& table, double width, const ReportType& type) {
  const auto extents = extentsOf(table, mostDecimals(table), type);
  const double between = type.points(gap);
  const std::size_t columns = extents.size() - 1;
  auto begins = beginnings(extents, width, between, columns);
  if (begins.size() < 2) {
    return {table};
  }
  begins = beginnings(extents, width, between, (columns + begins.size() - 1) / begins.size());
  std::vector<ReportTable> parts;
  for (std::size_t i = 0; i < begins.size(); ++i) {
    parts.push_back(part(table, begins[i], i + 1 < begins.size() ? begins[i + 1] : extents.size()));
  }
  return parts;
}

class TableStrips {
 public:
  TableStrips(const ReportTable& table, double width, const ReportType& type)
      : m_table(table), m_type(type), m_decimals(mostDecimals(table)) {
    const double between = type.points(gap);
    const double gaps = between * static_cast<double>(table.columns.size() - 1);
    m_widths = widthsOf(extentsOf(table, m_decimals, type), width - gaps);
    m_width = std::accumulate(m_widths.begin(), m_widths.end(), gaps);
  }

  void addTo(std::vector<Strip>& strips) {
    std::vector<std::string> heads;
    for (const auto& column : m_table.columns) {
      heads.push_back(column.head);
    }
    const std::size_t headAt = strips.size();
    RowLook look = lookOf(Palette::print().text, 0.75);
    look.before = m_type.points(spaceAbove);
    look.withNext = true;
    append(strips, cellsOf({heads, false}, m_type.tableHead), look);
    const std::size_t headStrips = strips.size() - headAt;
    for (std::size_t i = 0; i < m_table.rows.size(); ++i) {
      RowLook line = lookOf(Palette::print().line, 0.5);
      const bool isLast = i + 1 == m_table.rows.size();
      line.withNext = !isLast && (i + 1 < rowsBelow || i + rowsBelow >= m_table.rows.size());
      const std::size_t at = strips.size();
      append(strips, cellsOf(m_table.rows[i], m_type.table), line);
      for (std::size_t strip = at; strip < strips.size(); ++strip) {
        strips[strip].headAt = headAt;
        strips[strip].heads = headStrips;
      }
    }
  }

 private:
  RowLook lookOf(const QColor& rule, double thickness) const {
    RowLook look;
    look.padding = m_type.points(rowPadding);
    look.right = m_width;
    look.rule = rule;
    look.ruleWidth = m_type.points(thickness);
    return look;
  }

  void append(std::vector<Strip>& strips, const std::vector<ReportCell>& cells, const RowLook& look) {
    auto row = stripsOfRow(cells, look, m_type);
    std::move(row.begin(), row.end(), std::back_inserter(strips));
  }

  std::vector<ReportCell> cellsOf(const ReportTable::Row& row, const QFont& font) const {
    std::vector<ReportCell> cells;
    double x = 0;
    for (std::size_t i = 0; i < m_widths.size(); ++i) {
      ReportCell cell{keptTogether(row.cells[i]), x, m_widths[i], font, Palette::print().text,
                      m_table.columns[i].figures};
      if (cell.atRight) {
        cell.width -= m_type.widthOf(lackingDecimals(row.cells[i], m_decimals[i]), font);
      }
      if (row.struck && i + 1 < row.cells.size()) {
        cell.font.setStrikeOut(true);
        cell.colour = Palette::print().dim;
      }
      cells.push_back(std::move(cell));
      x += m_widths[i] + m_type.points(gap);
    }
    return cells;
  }

  const ReportTable& m_table;
  const ReportType& m_type;
  std::vector<qsizetype> m_decimals;
  std::vector<double> m_widths;
  double m_width = 0;
};

/// Whether a row holds nothing but numbers and short words, and was not left out.
bool isNarrow(const ReportTable::Row& row) {
  return !row.struck && std::all_of(row.cells.begin(), row.cells.end(), [](const std::string& cell) {
    return QString::fromStdString(cell).size() <= shortWord || decimalsIn(cell);
  });
}

/// How many times a long table of readings stands beside itself on a page.
std::size_t timesBeside(const ReportTable& table, double width, const ReportType& type) {
  if (table.rows.size() < longTable || !std::all_of(table.rows.begin(), table.rows.end(), isNarrow)) {
    return 1;
  }
  double least = type.points(2 * gap);  // and the blank column between
  for (const auto& extent : extentsOf(table, mostDecimals(table), type)) {
    least += extent.least + type.points(gap);  // words of a head may stand below each other
  }
  return std::clamp<std::size_t>(static_cast<std::size_t>(width / least), 1, mostBeside);
}

/// The rows of a table in that many parts side by side, down the first part, then the next.
ReportTable folded(const ReportTable& table, std::size_t times) {
  const std::size_t height = (table.rows.size() + times - 1) / times;
  ReportTable all;
  all.rows.resize(height);
  for (std::size_t time = 0; time < times; ++time) {
    if (time > 0) {
      all.columns.push_back({});
    }
    all.columns.insert(all.columns.end(), table.columns.begin(), table.columns.end());
    for (std::size_t i = 0; i < height; ++i) {
      const std::size_t from = time * height + i;
      auto cells = from < table.rows.size() ? table.rows[from].cells
                                            : std::vector<std::string>(table.columns.size());
      if (time > 0) {
        all.rows[i].cells.emplace_back();
      }
      all.rows[i].cells.insert(all.rows[i].cells.end(), cells.begin(), cells.end());
    }
  }
  return all;
}

}  // namespace

void addTable(std::vector<Strip>& strips, const ReportTable& table, double width, const ReportType& type) {
  if (table.columns.empty()) {
    return;
  }
  const std::size_t times = timesBeside(table, width, type);
  const ReportTable beside = times > 1 ? folded(table, times) : table;
  for (const auto& one : fittingParts(beside, width, type)) {
    TableStrips(one, width, type).addTo(strips);
  }
}

void addFacts(std::vector<Strip>& strips, const KeyValues& facts, double width, const ReportType& type) {
  double name = 0, value = 0;
  for (const auto& fact : facts.pairs) {
    name = std::max(name, type.widthOf(keptTogether(fact.first), type.body) + type.points(gap));
    value = std::max(value, type.widthOf(keptTogether(fact.second), type.body));
  }
  const double half = (width - type.points(2 * gap)) / 2;
  const bool areShort = facts.pairs.size() > 2 && std::min(name, half * longestName) + value < half;
  name = std::min(name, (areShort ? half : width) * longestName);
  const std::size_t rows = areShort ? (facts.pairs.size() + 1) / 2 : facts.pairs.size();
  for (std::size_t i = 0; i < rows; ++i) {
    std::vector<ReportCell> cells;
    for (std::size_t fact = i; fact < facts.pairs.size(); fact += rows) {
      const double x = fact == i ? 0 : width - half;
      cells.push_back({keptTogether(facts.pairs[fact].first), x, name - type.points(gap / 2), type.body,
                       Palette::print().dim});
      cells.push_back({keptTogether(facts.pairs[fact].second), x + name, (areShort ? half : width) - name,
                       type.body, Palette::print().text});
    }
    RowLook look;
    look.before = i == 0 ? type.points(spaceAbove) : 0;
    look.padding = type.points(0.75);
    look.withNext = i + 1 < rows && (i == 0 || i + 2 == rows);
    auto row = stripsOfRow(cells, look, type);
    std::move(row.begin(), row.end(), std::back_inserter(strips));
  }
}

}  // namespace fettle::ui
