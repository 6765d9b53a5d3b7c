#pragma once
#include <QLayout>
#include <memory>
#include <vector>

namespace fettle::ui {

/// Small widgets side by side in columns of equal width, on as many lines as needed. A widget that does
/// not fit one column takes several; hidden widgets take none.
class FlowLayout : public QLayout {
 public:
  /// `cellWidth` is the least width of a column; 0: every widget is as wide as it wants to be.
  explicit FlowLayout(int cellWidth, QWidget* parent = nullptr);
  ~FlowLayout() override;
  Q_DISABLE_COPY_MOVE(FlowLayout)

  void addItem(QLayoutItem* item) override;
  int count() const override;
  QLayoutItem* itemAt(int index) const override;
  QLayoutItem* takeAt(int index) override;
  Qt::Orientations expandingDirections() const override { return {}; }
  bool hasHeightForWidth() const override { return true; }
  int heightForWidth(int width) const override;
  QSize sizeHint() const override { return minimumSize(); }
  QSize minimumSize() const override;
  void setGeometry(const QRect& rect) override;

 private:
  struct Place {
    QLayoutItem* item;
    QRect rect;
  };
  /// Where everything goes in this rectangle; the height used is that of the last line's bottom.
  std::vector<Place> places(const QRect& rect) const;
  int widthOf(const QLayoutItem& item, int whole) const;

  int m_cellWidth;
  std::vector<std::unique_ptr<QLayoutItem>> m_items;
};

}  // namespace fettle::ui
