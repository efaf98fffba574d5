#pragma once
// A row of choices of which one holds, in one frame.

#include <QButtonGroup>
#include <QWidget>

namespace sumpwright::stages {

class Segments final : public QWidget {
  Q_OBJECT

 public:
  /// How much room a word gets: `close` where many stand in a narrow row.
  enum class Spacing { wide, close };
  /// `name` is what the row chooses, for a screen reader.
  Segments(const QString& name, const QStringList& choices, QWidget* parent = nullptr,
           Spacing spacing = Spacing::wide);
  int chosen() const { return m_group.checkedId(); }
  /// Shows a choice without telling anybody.
  void show(int index);
  QAbstractButton* button(int index) const { return m_group.button(index); }

 Q_SIGNALS:
  void picked(int index);

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  QButtonGroup m_group;
};

}  // namespace sumpwright::stages
