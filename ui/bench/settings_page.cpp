#include "ui/bench/settings_page.h"

#include <QApplication>
#include <QClipboard>
#include <QDialogButtonBox>
#include <QFileDialog>
#include <QHeaderView>
#include <QLabel>
#include <QMessageBox>
#include <QPrintDialog>
#include <QPrinter>
#include <QPushButton>
#include <QSaveFile>
#include <QTableWidget>
#include <QTextDocument>
#include <QVBoxLayout>

#include "core/measure/format.h"
#include "core/measure/unit.h"
#include "core/steps/catalogue.h"
#include "ui/bench/day.h"

namespace fettle::ui {
namespace {

constexpr int digitsWithoutU = 5;  ///< lose less than a twenty-thousandth

/// As entered at a machine: enough digits to lose nothing against the uncertainty, and none beyond.
QString entered(const SettingValue& value, const std::optional<double>& U) {
  if (!value.number) {
    return QString::fromStdString(value.text);
  }
  if (U && *U > 0) {
    return QString::fromStdString(formatFixed(*value.number, decimalsFor(*U, 2)));
  }
  QString text =
      QString::fromStdString(formatFixed(*value.number, decimalsFor(*value.number, digitsWithoutU)));
  while (text.contains('.') && (text.endsWith('0') || text.endsWith('.'))) {
    text.chop(1);
  }
  return text;
}

QString plusMinus(const SettingInForce& setting) {
  const auto& U = setting.asLeft->U;
  return U && *U > 0 ? QString::fromStdString(formatFixed(*U, decimalsFor(*U, 2))) : QString();
}

QString unitOf(const SettingInForce& setting) {
  return QString::fromStdString(displayUnit(setting.unit));
}

/// As it was typed.
QString asFound(const SettingInForce& setting) {
  const auto& number = setting.asFound.number;
  return QString::fromStdString(number ? formatNumber(*number) : setting.asFound.text);
}

QString asLeft(const SettingInForce& setting) {
  return entered(setting.asLeft->value, setting.asLeft->U);
}

QString csvCell(QString text) {
  return '"' + text.replace('"', "\"\"") + '"';
}

}  // namespace

QString settingsAsText(const std::vector<SettingInForce>& settings) {
  QStringList lines;
  for (const auto& setting : settings) {
    const QString U = plusMinus(setting);
    lines << QStringLiteral("%1\t%2%3 %4")
                 .arg(QString::fromStdString(setting.label), asLeft(setting),
                      U.isEmpty() ? QString() : " ± " + U, unitOf(setting))
                 .trimmed();
  }
  return lines.join('\n') + (lines.isEmpty() ? "" : "\n");
}

QString settingsAsCsv(const std::vector<SettingInForce>& settings) {
  QString csv = QStringLiteral("setting,name,as found,as left,unit,U,step,date\n");
  const QChar minus(0x2212);
  for (const auto& setting : settings) {
    const auto& left = *setting.asLeft;
    const QString row = QStringList{QString::fromStdString(setting.id),
                                    csvCell(QString::fromStdString(setting.label)),
                                    asFound(setting),
                                    asLeft(setting),
                                    csvCell(unitOf(setting)),
                                    plusMinus(setting),
                                    QString::fromStdString(setting.step),
                                    QString::fromStdString(left.date)}
                            .join(',');
    csv += QString(row).replace(minus, '-') + '\n';
  }
  return csv;
}

SettingsPage::SettingsPage(const Document& document, QWidget* parent) : QDialog(parent) {
  setObjectName("settingsPage");
  setWindowTitle(tr("To enter at the machine"));
  resize(860, 420);
  for (auto& setting : settingsInForce(document.history(), document.session())) {
    if (setting.asLeft) {
      m_settings.push_back(std::move(setting));
    }
  }
  m_machine = QString::fromStdString(document.history().machine.sheet.value("name", ""));
  auto* column = new QVBoxLayout(this);
  auto* words = new QLabel(
      m_settings.empty()
          ? tr("Nothing was adopted in this session yet. Adopt a proposed value on a step's page.")
          : tr("Enter these at %1, then switch it off and on and read them back.").arg(m_machine));
  words->setWordWrap(true);
  column->addWidget(words);
  m_table = new QTableWidget(static_cast<int>(m_settings.size()), 6);
  m_table->setObjectName("settingsTable");
  m_table->setAccessibleName(windowTitle());
  m_table->setEditTriggers(QAbstractItemView::NoEditTriggers);
  m_table->setTabKeyNavigation(false);  // Tab goes on to the buttons
  m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
  m_table->setHorizontalHeaderLabels(
      {tr("setting"), tr("as found"), tr("enter"), tr("±"), tr("unit"), tr("from")});
  m_table->verticalHeader()->hide();
  m_table->verticalHeader()->setDefaultSectionSize(26);
  m_table->horizontalHeader()->setSectionResizeMode(0, QHeaderView::Stretch);
  for (std::size_t row = 0; row < m_settings.size(); ++row) {
    const auto& setting = m_settings[row];
    const QStringList cells{
        QString::fromStdString(setting.label),
        asFound(setting),
        asLeft(setting),
        plusMinus(setting),
        unitOf(setting),
        QString::fromStdString(stepName(setting.step)) + ", " + dayInWords(setting.asLeft->date)};
    for (int i = 0; i < cells.size(); ++i) {
      auto* item = new QTableWidgetItem(cells[i]);
      item->setTextAlignment(Qt::AlignVCenter | (i >= 1 && i <= 3 ? Qt::AlignRight : Qt::AlignLeft));
      m_table->setItem(static_cast<int>(row), i, item);
    }
  }
  for (int i = 1; i < m_table->columnCount(); ++i) {
    m_table->resizeColumnToContents(i);
  }
  column->addWidget(m_table, 1);
  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close);
  const auto add = [&](const QString& text, const char* name, const std::function<void()>& action) {
    auto* button = buttons->addButton(text, QDialogButtonBox::ActionRole);
    button->setObjectName(name);
    button->setEnabled(!m_settings.empty());
    connect(button, &QPushButton::clicked, this, action);
  };
  add(tr("&Copy as text"), "copyTextButton",
      [this] { QApplication::clipboard()->setText(settingsAsText(m_settings)); });
  add(tr("Copy as C&SV"), "copyCsvButton",
      [this] { QApplication::clipboard()->setText(settingsAsCsv(m_settings)); });
  add(tr("Sa&ve CSV…"), "saveCsvButton", [this] { saveCsv(); });
  add(tr("&Print…"), "printButton", [this] { print(); });
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  column->addWidget(buttons);
}

void SettingsPage::saveCsv() {
  const QString name =
      QFileDialog::getSaveFileName(this, tr("Save settings"), "settings.csv", tr("CSV (*.csv)"));
  if (name.isEmpty()) {
    return;
  }
  QSaveFile file(name);
  if (!file.open(QIODevice::WriteOnly) || file.write(settingsAsCsv(m_settings).toUtf8()) < 0 ||
      !file.commit()) {
    QMessageBox::warning(this, windowTitle(),
                         tr("%1 cannot be written: %2.").arg(name, file.errorString()));
  }
}

void SettingsPage::print() {
  QPrinter printer;
  QPrintDialog dialog(&printer, this);
  if (dialog.exec() != QDialog::Accepted) {
    return;
  }
  QString rows;
  for (const auto& setting : m_settings) {
    rows += QStringLiteral(
                "<tr><td>%1</td><td align='right'>%2</td><td align='right'><b>%3</b></td><td "
                "align='right'>%4</td><td>%5</td></tr>")
                .arg(QString::fromStdString(setting.label).toHtmlEscaped(), asFound(setting),
                     asLeft(setting), plusMinus(setting), unitOf(setting));
  }
  QTextDocument page;
  page.setHtml(
      QStringLiteral("<h2>%1: %2</h2><table border='1' cellspacing='0' cellpadding='4'><tr><th>%3</th>"
                     "<th>%4</th><th>%5</th><th>%6</th><th>%7</th></tr>%8</table>")
          .arg(m_machine.toHtmlEscaped(), windowTitle(), tr("setting"), tr("as found"), tr("enter"),
               tr("±"), tr("unit"), rows));
  page.print(&printer);
}

}  // namespace fettle::ui
