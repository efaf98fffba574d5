#pragma once
// A note in the panel: what happened, what it means, what to do. Not modal. A warning has a bar at
// its left, the tint, and a button for the cure.

#include <QFrame>
#include <QLabel>
#include <QPushButton>

namespace sumpwright::stages {

class SideNote final : public QFrame {
  Q_OBJECT

 public:
  enum class Kind { warning, information };
  explicit SideNote(Kind kind, QWidget* parent = nullptr);
  void setText(const QString& text);
  QString text() const { return m_text->text(); }
  /// The cure; an empty label takes the button away.
  void setCure(const QString& label);
  /// A cross at the right that hides the note.
  void setDismissable();

 Q_SIGNALS:
  void curePressed();

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  Kind m_kind;
  QLabel* m_text;
  QPushButton* m_cure;
  QPushButton* m_dismiss;
};

}  // namespace sumpwright::stages
