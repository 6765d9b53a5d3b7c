#include "ui/forms/capture_editor.h"

#include <QApplication>
#include <QClipboard>
#include <QDropEvent>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QPainter>
#include <QPushButton>
#include <QVBoxLayout>

#include "ui/forms/dropped_files.h"
#include "ui/forms/field_value.h"
#include "ui/forms/small_label.h"

namespace fettle::ui {
namespace {

/// A file name that is shortened in its middle where there is no room for it.
class FileNameLabel : public QLabel {
 protected:
  void paintEvent(QPaintEvent* /*event*/) override {
    QPainter painter(this);
    painter.setPen(palette().color(foregroundRole()));
    painter.drawText(contentsRect(), Qt::AlignVCenter | Qt::AlignLeft,
                     fontMetrics().elidedText(text(), Qt::ElideMiddle, contentsRect().width()));
  }
};

}  // namespace

CaptureEditor::CaptureEditor(Field described, const FormContext& context, QWidget* parent)
    : FieldEditor(std::move(described), parent),
      m_context(context),
      m_name(new FileNameLabel),
      m_rows(new SmallLabel),
      m_choose(new QPushButton(tr("Choose file…"))),
      m_remove(new QPushButton(tr("Remove"))) {
  setObjectName(childName("CaptureEditor"));
  m_name->setObjectName(childName("FileLabel"));
  m_choose->setObjectName(childName("ChooseButton"));
  m_remove->setObjectName(childName("RemoveButton"));
  nameFor(m_choose);
  m_choose->setAccessibleName(tr("%1: choose file").arg(label()));
  m_remove->setAccessibleName(tr("%1: remove file").arg(label()));
  m_name->setTextFormat(Qt::PlainText);
  m_name->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
  auto* line = new QHBoxLayout;
  line->addWidget(m_name, 1);
  line->addWidget(m_rows);
  line->addWidget(m_choose);
  line->addWidget(m_remove);
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(2);
  layout->addWidget(makeCaption(m_choose));
  layout->addLayout(line);
  setAcceptDrops(true);
  setFocusProxy(m_choose);
  connect(m_choose, &QPushButton::clicked, this, &CaptureEditor::choose);
  connect(m_remove, &QPushButton::clicked, this, [this] {
    commit({}, tr("%1, no file").arg(label()));
    showValue(value());
  });
  showValue({});
}

void CaptureEditor::setReadOnly(bool readOnly) {
  m_choose->setEnabled(!readOnly);
  m_remove->setEnabled(!readOnly);
  setAcceptDrops(!readOnly);
}

void CaptureEditor::showValue(const Json& value) {
  const QString name = valueText(field(), value);
  m_name->setText(name.isEmpty() ? tr("No file yet. Drop one here.") : name);
  m_name->setToolTip(name);
  m_name->setForegroundRole(name.isEmpty() ? QPalette::PlaceholderText : QPalette::WindowText);
  const Json& rows = memberOf(value, "rows");
  m_rows->setSentence(rows.is_number() ? tr("%1 rows").arg(numberText(rows.get<double>())) : QString());
  m_remove->setVisible(!name.isEmpty());
}

void CaptureEditor::choose() {
  if (m_context.chooseFiles) {
    take(m_context.chooseFiles(this, tr("Choose a file for %1").arg(label())));
  }
}

void CaptureEditor::take(const QStringList& files) {
  if (!files.isEmpty() && m_choose->isEnabled()) {
    emit fileChosen(QString::fromStdString(field().key), files.front());
  }
}

void CaptureEditor::keyPressEvent(QKeyEvent* event) {
  if (event->matches(QKeySequence::Paste)) {
    take(filesIn(QApplication::clipboard()->mimeData()));
  } else {
    FieldEditor::keyPressEvent(event);
  }
}

void CaptureEditor::dragEnterEvent(QDragEnterEvent* event) {
  event->setAccepted(!filesIn(event->mimeData()).isEmpty());
}

void CaptureEditor::dropEvent(QDropEvent* event) {
  take(filesIn(event->mimeData()));
  event->acceptProposedAction();
}

}  // namespace fettle::ui
