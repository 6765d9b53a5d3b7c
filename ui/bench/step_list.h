#pragma once
#include <QAbstractListModel>
#include <QListView>

#include "core/history/state.h"
#include "ui/editing/document.h"
#include "ui/theme/palette.h"

namespace fettle::ui {

/// The steps of the catalogue under their stages, with state and headline value.
class StepListModel : public QAbstractListModel {
  Q_OBJECT
 public:
  enum Role { keyRole = Qt::UserRole, numberRole, glyphRole, valueRole, toneRole, headingRole };

  explicit StepListModel(const Document* document, QObject* parent = nullptr);
  void setDocument(const Document* document);
  int rowCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  Qt::ItemFlags flags(const QModelIndex& index) const override;
  /// Reads the states again; all views follow.
  void refresh();
  QModelIndex indexOf(const std::string& step) const;

 private:
  struct Row {
    const Step* step = nullptr;  ///< null: a stage heading
    QString text;
    int number = 0;
    StepStanding standing;
    QStringList values{QString()};  ///< what stands on the right, the longest first, a state word last
  };
  std::vector<Row> m_rows;
  const Document* m_document;
};

/// The left column: one line a step, walked with the arrow keys.
class StepList : public QListView {
  Q_OBJECT
 public:
  StepList(StepListModel* model, const Palette& palette, QWidget* parent = nullptr);
  void choose(const std::string& step);
  std::string chosen() const;
  /// The step before or after the chosen one.
  void walk(int direction);

 signals:
  void stepChosen(const QString& step);
};

}  // namespace fettle::ui
