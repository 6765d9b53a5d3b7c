#include "ui/theme/look.h"

#include <QApplication>
#include <QEvent>
#include <QFontDatabase>
#include <QPalette>
#include <QStyleFactory>
#include <QWidget>

namespace fettle::ui {
namespace {

QFont sized(QFont font, double points, QFont::Weight weight = QFont::Normal) {
  font.setPointSizeF(points);
  font.setWeight(weight);
  return font;
}

void disable(QPalette& colours, const Palette& palette) {
  for (const auto role :
       {QPalette::WindowText, QPalette::Text, QPalette::ButtonText, QPalette::HighlightedText}) {
    colours.setColor(QPalette::Disabled, role, palette.dim);
  }
  colours.setColor(QPalette::Disabled, QPalette::Base, palette.ground);
}

QPalette widgetColours(const Palette& palette) {
  QPalette colours;
  colours.setColor(QPalette::Window, palette.ground);
  colours.setColor(QPalette::WindowText, palette.text);
  colours.setColor(QPalette::Base, palette.panel);
  colours.setColor(QPalette::AlternateBase, palette.ground);
  colours.setColor(QPalette::Text, palette.text);
  colours.setColor(QPalette::PlaceholderText, palette.dim);
  colours.setColor(QPalette::Button, palette.panel);
  colours.setColor(QPalette::ButtonText, palette.text);
  colours.setColor(QPalette::BrightText, palette.fault);
  colours.setColor(QPalette::Highlight, palette.selection);
  colours.setColor(QPalette::HighlightedText, palette.text);
  colours.setColor(QPalette::Link, palette.accent);
  colours.setColor(QPalette::LinkVisited, palette.accent);
  colours.setColor(QPalette::ToolTipBase, palette.panel);
  colours.setColor(QPalette::ToolTipText, palette.text);
  colours.setColor(QPalette::Light, palette.panel);
  colours.setColor(QPalette::Midlight, palette.line);
  colours.setColor(QPalette::Mid, palette.line);
  colours.setColor(QPalette::Dark, palette.dim);
  colours.setColor(QPalette::Shadow, palette.dim);
  disable(colours, palette);
  return colours;
}

// Only what a palette cannot say: outlines instead of raised edges, plain text tabs, table heads.
const char* const styleSheet = R"(
QPushButton { color: @accent; background: @panel; border: 1px solid @accent; border-radius: 3px;
  padding: 3px 10px; }
QPushButton:hover, QPushButton:focus { color: @text; background: @selection; }
QPushButton:pressed { background: @line; }
QPushButton:disabled { color: @dim; border-color: @line; }
QPushButton:flat { border-color: transparent; background: transparent; padding: 0 4px; }
QPushButton:flat:focus { border-color: @accent; }
QLineEdit, QPlainTextEdit, QTextEdit { border: 1px solid @line; border-radius: 3px; padding: 3px 8px; }
QPlainTextEdit, QTextEdit { padding: 5px; }
QLineEdit:read-only { background: @ground; }
QToolButton[checkable="true"] { color: @text; background: @panel; border: 1px solid @line;
  border-radius: 3px; padding: 3px 8px; }
QToolButton[checkable="true"]:checked { background: @selection; border-color: @accent; }
QToolButton[checkable="true"]:disabled { color: @dim; }
QToolButton::menu-indicator { image: none; width: 0; }
#instrumentBar QToolButton { color: @dim; border: none; padding: 1px 0; }
#instrumentBar QToolButton:hover, #instrumentBar QToolButton:focus { color: @accent; }
QLineEdit:focus, QPlainTextEdit:focus, QTextEdit:focus { border-color: @accent; }
QTableView { border: 1px solid @line; gridline-color: @line; }
QTableView QTableCornerButton::section { background: @panel; border: none; }
QTableView QLineEdit { border: none; border-radius: 0; padding: 0 4px; }
QHeaderView { background: @panel; }
QHeaderView::section { background: @panel; color: @dim; border: none; border-right: 1px solid @line;
  border-bottom: 1px solid @line; padding: 3px 6px; }
QTabBar { background: transparent; }
QTabBar::tab { background: transparent; color: @dim; border: none; border-bottom: 2px solid transparent;
  padding: 5px 10px; }
QTabBar::tab:selected { color: @text; border-bottom-color: @accent; }
QTabBar::tab:hover, QTabBar::tab:focus { color: @accent; }
QTabBar::tab:selected:focus { background: @selection; }
QTabWidget::pane { border: none; border-top: 1px solid @line; }
QSplitter::handle { background: @line; }
QDialogButtonBox { dialogbuttonbox-buttons-have-icons: 0; }
#stepFoot { background: @ground; border-top: 1px solid @line; }
QScrollBar { background: transparent; border: none; margin: 0; }
QScrollBar:vertical { width: 12px; }
QScrollBar:horizontal { height: 12px; }
QScrollBar::handle { background: @line; border: 3px solid transparent; border-radius: 5px; }
QScrollBar::handle:vertical { min-height: 24px; }
QScrollBar::handle:horizontal { min-width: 24px; }
QScrollBar::handle:hover, QScrollBar::handle:pressed { background: @dim; }
QScrollBar::add-line, QScrollBar::sub-line { width: 0; height: 0; }
QScrollBar::add-page, QScrollBar::sub-page { background: transparent; }
QToolTip { color: @text; background: @panel; border: 1px solid @line; padding: 3px; }
)";

QString styleSheetOf(const Palette& palette) {
  QString sheet = QString::fromLatin1(styleSheet);
  const std::pair<const char*, const QColor&> colours[] = {
      {"@accent", palette.accent}, {"@ground", palette.ground},
      {"@panel", palette.panel},   {"@selection", palette.selection},
      {"@line", palette.line},     {"@dim", palette.dim},
      {"@text", palette.text}};
  for (const auto& [name, colour] : colours) {
    sheet.replace(QLatin1String(name), colour.name());
  }
  return sheet;
}

const Palette& chosen(const QApplication& application, Look look) {
  switch (look) {
    case Look::light:
      return Palette::light();
    case Look::dark:
      return Palette::dark();
    case Look::desktop:
      break;
  }
  return application.palette().color(QPalette::Window).lightness() < 128 ? Palette::dark()
                                                                         : Palette::light();
}

}  // namespace

std::optional<Look> lookFromText(const QString& text) {
  const std::pair<const char*, Look> looks[] = {
      {"light", Look::light}, {"dark", Look::dark}, {"desktop", Look::desktop}};
  for (const auto& [word, look] : looks) {
    if (text == QLatin1String(word)) {
      return look;
    }
  }
  return std::nullopt;
}

const Palette& applyLook(QApplication& application, Look look) {
  QApplication::setStyle(QStyleFactory::create("Fusion"));
  QApplication::setPalette(QPalette());  // back to the desktop's own, to see whether that is dark
  const Palette& palette = chosen(application, look);
  QApplication::setPalette(widgetColours(palette));
  QApplication::setFont(fontsOf().base);
  application.setStyleSheet(styleSheetOf(palette));
  return palette;
}

void setTypeSize(QApplication& application, double basePointSize) {
  QApplication::setFont(fontsOf(basePointSize).base);
  // Widgets a style sheet has touched keep their type until it is laid on them again.
  application.setStyleSheet(application.styleSheet());
  // Only windows are told by Qt; what derives its type from the program's asks again now.
  for (QWidget* widget : QApplication::allWidgets()) {
    for (const auto type : {QEvent::ApplicationFontChange, QEvent::FontChange}) {
      QEvent changed(type);
      QCoreApplication::sendEvent(widget, &changed);
    }
  }
}

Fonts fontsOf(double basePointSize) {
  QFont font = QFontDatabase::systemFont(QFontDatabase::GeneralFont);
#if QT_VERSION >= QT_VERSION_CHECK(6, 7, 0)
  font.setFeature("tnum", 1);  // older versions rely on the font's own figures
#endif
  const auto points = [basePointSize](double size) { return size * basePointSize / 10; };
  return {sized(font, points(10)), sized(font, points(8.5)), sized(font, points(14), QFont::DemiBold),
          sized(font, points(12), QFont::DemiBold)};
}

}  // namespace fettle::ui
