#include "ui/bench/step_list.h"

#include <QPainter>
#include <QStyledItemDelegate>

#include "core/steps/catalogue.h"
#include "ui/bench/headline.h"
#include "ui/theme/look.h"

namespace fettle::ui {
namespace {

/// What stands on the right of a line where there is room: the headline value, once there is one.
QString headlineFor(const Document& document, const Step& step, const StepStanding& standing) {
  const StepRun* shown = nullptr;
  for (const auto& run : document.history().runs) {
    if (run.step == step.key && run.session <= document.session() && !run.inputs.empty()) {
      shown = &run;
    }
  }
  const auto evaluated =
      shown ? document.history().evaluated.find(shown->id) : document.history().evaluated.end();
  if (evaluated == document.history().evaluated.end()) {
    return {};
  }
  const StepResult& result = evaluated->second.result;
  const bool isDue = standing.state == StepState::due;
  if (!isDue && standing.state != StepState::accepted && standing.state != StepState::computed) {
    return {};
  }
  const int faults = countFindings(result, Severity::fault);
  if (faults > 0 && !isDue) {
    return faultsInWords(faults);
  }
  return headlineOf(step, result);
}

/// The longest of the texts that fits; the last one whether it fits or not.
QString fitting(const QStringList& texts, const QFontMetrics& metrics, int room) {
  for (const auto& text : texts) {
    if (metrics.horizontalAdvance(text) + 2 <= room) {
      return text;
    }
  }
  return texts.back();
}

class StepDelegate : public QStyledItemDelegate {
 public:
  StepDelegate(const Palette& palette, QObject* parent) : QStyledItemDelegate(parent), m_palette(palette) {}

  QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    const int line = option.fontMetrics.height();
    return {200, index.data(StepListModel::headingRole).toBool() ? line + 12 : std::max(24, line + 6)};
  }

  void paint(QPainter* painter, const QStyleOptionViewItem& option,
             const QModelIndex& index) const override {
    painter->save();
    if (index.data(StepListModel::headingRole).toBool()) {
      paintHeading(*painter, option, index);
    } else {
      paintStep(*painter, option, index);
    }
    painter->restore();
  }

 private:
  void paintHeading(QPainter& painter, const QStyleOptionViewItem& option, const QModelIndex& index) const {
    QFont font = fontsOf(option.font.pointSizeF()).small;
    font.setCapitalization(QFont::AllUppercase);
    font.setLetterSpacing(QFont::AbsoluteSpacing, 0.6);
    painter.setFont(font);
    painter.setPen(m_palette.dim);
    painter.drawText(option.rect.adjusted(14, 0, -8, -4), Qt::AlignBottom | Qt::AlignLeft,
                     index.data(Qt::DisplayRole).toString());
  }

  void paintStep(QPainter& painter, const QStyleOptionViewItem& option, const QModelIndex& index) const {
    const bool chosen = option.state & QStyle::State_Selected;
    const QRect row = option.rect;
    const QColor ground = chosen ? m_palette.selection : m_palette.list;
    if (chosen) {
      painter.fillRect(row, m_palette.selection);
      painter.fillRect(QRect(row.left(), row.top(), 3, row.height()), m_palette.accent);
    }
    const Fonts fonts = fontsOf(option.font.pointSizeF());
    QFont name = fonts.base;
    name.setWeight(chosen ? QFont::DemiBold : QFont::Normal);
    const QColor dim = readable(m_palette.dim, ground);

    painter.setFont(fonts.small);
    painter.setPen(dim);
    painter.drawText(QRect(row.left() + 8, row.top(), 22, row.height()), Qt::AlignVCenter | Qt::AlignRight,
                     index.data(StepListModel::numberRole).toString());
    const QString title = index.data(Qt::DisplayRole).toString();
    // A value that does not fit gives way to the word of the state, and the name to that word.
    const QFontMetrics small(fonts.small);
    const QString value = fitting(index.data(StepListModel::valueRole).toStringList(), small,
                                  row.width() - 74 - QFontMetrics(name).horizontalAdvance(title));
    const int valueWidth = small.horizontalAdvance(value) + 2;
    const QRect valueRect(row.right() - 12 - valueWidth, row.top(), valueWidth, row.height());
    painter.drawText(valueRect, Qt::AlignVCenter | Qt::AlignRight, value);

    painter.setFont(name);
    painter.setPen(
        readable(toneOf(static_cast<StepState>(index.data(StepListModel::toneRole).toInt())), ground));
    painter.drawText(QRect(row.left() + 34, row.top(), 18, row.height()), Qt::AlignCenter,
                     index.data(StepListModel::glyphRole).toString());
    painter.setPen(m_palette.text);
    const QRect nameRect(row.left() + 56, row.top(), valueRect.left() - row.left() - 62, row.height());
    painter.drawText(nameRect, Qt::AlignVCenter | Qt::AlignLeft,
                     QFontMetrics(name).elidedText(title, Qt::ElideRight, nameRect.width()));
  }

  const QColor& toneOf(StepState state) const {
    switch (state) {
      case StepState::accepted:
        return m_palette.pass;
      case StepState::due:
      case StepState::overridden:
        return m_palette.caution;
      case StepState::blocked:
        return m_palette.fault;
      case StepState::computed:
      case StepState::incomplete:
        return m_palette.accent;
      default:
        return m_palette.dim;
    }
  }

  const Palette& m_palette;
};

}  // namespace

StepListModel::StepListModel(const Document* document, QObject* parent)
    : QAbstractListModel(parent), m_document(document) {
  int number = 0;
  std::optional<Stage> stage;
  for (const auto& step : catalogue()) {
    if (stage != step.stage) {
      stage = step.stage;
      m_rows.push_back({nullptr, QString::fromStdString(stageName(step.stage)), 0, {}});
    }
    m_rows.push_back({&step, QString::fromStdString(step.name), ++number, {}});
  }
  refresh();
}

void StepListModel::setDocument(const Document* document) {
  m_document = document;
  refresh();
}

int StepListModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
}

Qt::ItemFlags StepListModel::flags(const QModelIndex& index) const {
  const bool isStep = index.isValid() && m_rows[static_cast<std::size_t>(index.row())].step;
  return isStep ? Qt::ItemIsEnabled | Qt::ItemIsSelectable : Qt::NoItemFlags;
}

QVariant StepListModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid()) {
    return {};
  }
  const Row& row = m_rows[static_cast<std::size_t>(index.row())];
  switch (role) {
    case Qt::DisplayRole:
      return row.text;
    case Qt::ToolTipRole:
      return QString::fromStdString(row.standing.why);
    case Qt::AccessibleTextRole:
      return row.step ? tr("%1, step %2, %3").arg(row.text).arg(row.number).arg(row.values.front())
                      : row.text;
    case headingRole:
      return row.step == nullptr;
    case keyRole:
      return row.step ? QString::fromStdString(row.step->key) : QString();
    case numberRole:
      return row.number;
    case glyphRole:
      return QString::fromStdString(stateGlyph(row.standing.state));
    case valueRole:
      return row.values;
    case toneRole:
      return static_cast<int>(row.standing.state);
    default:
      return {};
  }
}

void StepListModel::refresh() {
  for (auto& row : m_rows) {
    if (row.step && m_document) {
      row.standing = standingOf(m_document->history(), *row.step, m_document->session());
      const QString word = QString::fromStdString(stateWord(row.standing.state));
      const QString headline = headlineFor(*m_document, *row.step, row.standing);
      row.values = QStringList(word);
      if (!headline.isEmpty()) {
        row.values.prepend(row.standing.state == StepState::due ? word + " · " + headline : headline);
      }
    }
  }
  emit dataChanged(index(0), index(rowCount() - 1));
}

QModelIndex StepListModel::indexOf(const std::string& step) const {
  for (std::size_t i = 0; i < m_rows.size(); ++i) {
    if (m_rows[i].step && m_rows[i].step->key == step) {
      return index(static_cast<int>(i));
    }
  }
  return {};
}

StepList::StepList(StepListModel* model, const Palette& palette, QWidget* parent) : QListView(parent) {
  setObjectName("stepList");
  setAccessibleName(tr("Steps"));
  setFrameShape(QFrame::NoFrame);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  QPalette colours = this->palette();
  colours.setColor(QPalette::Base, palette.list);
  setPalette(colours);
  setItemDelegate(new StepDelegate(palette, this));
  setModel(model);
  connect(selectionModel(), &QItemSelectionModel::currentChanged, this, [this](const QModelIndex& current) {
    emit stepChosen(current.data(StepListModel::keyRole).toString());
  });
}

void StepList::choose(const std::string& step) {
  setCurrentIndex(static_cast<StepListModel*>(model())->indexOf(step));
}

std::string StepList::chosen() const {
  return currentIndex().data(StepListModel::keyRole).toString().toStdString();
}

void StepList::walk(int direction) {
  for (int row = currentIndex().row() + direction; row >= 0 && row < model()->rowCount();
       row += direction) {
    const QModelIndex next = model()->index(row, 0);
    if (!next.data(StepListModel::headingRole).toBool()) {
      setCurrentIndex(next);
      return;
    }
  }
}

}  // namespace fettle::ui
