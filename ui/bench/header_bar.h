#pragma once
#include <QWidget>

#include "ui/editing/document.h"
#include "ui/theme/palette.h"

class QLabel;
class QPushButton;

namespace fettle::ui {

/// The top line: machine, session, operator, filament, time at the bench, steps done.
class HeaderBar : public QWidget {
  Q_OBJECT
 public:
  explicit HeaderBar(const Palette& palette, QWidget* parent = nullptr);
  void show(const Document& document);

 signals:
  void reportWanted();
  void sessionWanted();  ///< the session part was pressed
  void machineWanted();  ///< the machine part was pressed

 private:
  QPushButton* addPart(const QString& caption, const QString& name);
  const Palette& m_palette;
  QPushButton* m_machine;
  QPushButton* m_session;
  QPushButton* m_operator;
  QPushButton* m_filament;
  QPushButton* m_time;
  QPushButton* m_done;
};

}  // namespace fettle::ui
