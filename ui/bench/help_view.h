#pragma once
#include <QDialog>

#include "core/steps/contract/step.h"

class QTextBrowser;

namespace fettle::ui {

/// What to do in a step: its text from the resources, with purpose, tools, cautions, common mistakes and
/// sources. Stays open beside the bench and follows the chosen step.
class HelpView : public QDialog {
  Q_OBJECT
 public:
  explicit HelpView(QWidget* parent = nullptr);
  void show(const Step& step);
  using QDialog::show;

 private:
  QTextBrowser* m_text;
};

/// The Markdown of a step's text; empty when there is none.
QString stepText(const std::string& step);

}  // namespace fettle::ui
