#pragma once
// "Place at [12.40] from corner [A]": a length as typed, in metric or feet and inches. What may
// mean two things is asked about, never guessed.

#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QWidget>

#include "session/Session.h"

namespace sumpwright::stages {

class PlaceEntry final : public QWidget {
  Q_OBJECT

 public:
  explicit PlaceEntry(session::Session& session, QWidget* parent = nullptr);
  /// Opens with what was typed already, or with the place's own distance.
  void open(const QString& typed = {});
  QLineEdit* field() const { return m_field; }
  QComboBox* corners() const { return m_corner; }
  QString message() const { return m_message->text(); }
  QPushButton* reading(int which) const { return m_reading[which]; }

 Q_SIGNALS:
  void closed();

 protected:
  void keyPressEvent(QKeyEvent* event) override;

 private:
  void submit();
  void fillCorners();
  void place(double from_corner_m);
  void ask(const std::vector<double>& readings);
  void say(const QString& text);

  session::Session& m_session;
  QLineEdit* m_field;
  QComboBox* m_corner;
  QPushButton* m_go;
  QLabel* m_message;
  QPushButton* m_reading[2];
  double m_readings[2] = {0.0, 0.0};
};

}  // namespace sumpwright::stages
