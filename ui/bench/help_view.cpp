#include "ui/bench/help_view.h"

#include <QFile>
#include <QTextBrowser>
#include <QVBoxLayout>

#include "ui/bench/resources.h"

namespace fettle::ui {

QString stepText(const std::string& step) {
  takeInResources();
  QFile file(QStringLiteral(":/steps/%1.md").arg(QString::fromStdString(step)));
  return file.open(QIODevice::ReadOnly) ? QString::fromUtf8(file.readAll()) : QString();
}

HelpView::HelpView(QWidget* parent) : QDialog(parent) {
  setObjectName("helpView");
  resize(560, 640);
  auto* column = new QVBoxLayout(this);
  m_text = new QTextBrowser;
  m_text->setObjectName("helpText");
  m_text->setAccessibleName(tr("What to do"));
  column->addWidget(m_text);
}

void HelpView::show(const Step& step) {
  setWindowTitle(tr("%1: what to do").arg(QString::fromStdString(step.name)));
  m_text->setMarkdown(stepText(step.key));
}

}  // namespace fettle::ui
