#include "ui/forms/file_line.h"

#include <QHBoxLayout>
#include <QPushButton>

#include "ui/forms/field_value.h"
#include "ui/forms/small_label.h"

namespace fettle::ui {

FileLine::FileLine(const QString& name, QWidget* parent) : QWidget(parent), m_text(new SmallLabel) {
  auto* button = new QPushButton(tr("Type them instead"));
  button->setObjectName(name + "TypeInsteadButton");
  auto* layout = new QHBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->addWidget(m_text, 1);
  layout->addWidget(button);
  connect(button, &QPushButton::clicked, this, &FileLine::typeInstead);
  hide();
}

bool FileLine::show(const Json& value) {
  const Json& file = memberOf(value, "file");
  const bool isFile = file.is_string();
  m_text->setSentence(tr("The readings come from %1.")
                          .arg(isFile ? QString::fromStdString(file.get<std::string>()) : QString()));
  setVisible(isFile);
  return isFile;
}

}  // namespace fettle::ui
