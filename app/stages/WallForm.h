#pragma once
// What is known of the wall in hand: whose it is, how thick, what it stands on, what lies outside.
// What was said of one wall can be said of all.

#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QWidget>

#include "session/Session.h"
#include "stages/SteadyCombo.h"

namespace sumpwright::stages {

class WallForm final : public QWidget {
  Q_OBJECT

 public:
  explicit WallForm(session::Session& session, QWidget* parent = nullptr);
  /// Shows the selected wall; hides itself where none is.
  void refresh();

  QComboBox* kind() const { return m_kind; }
  QComboBox* foundation() const { return m_foundation; }
  QComboBox* ground() const { return m_ground; }
  QLineEdit* thickness() const { return m_thickness; }
  QLineEdit* freeDepth() const { return m_free_depth; }
  QPushButton* forAll() const { return m_for_all; }

 private:
  /// The wall in hand; {-1, -1} where there is none.
  std::pair<int, int> at() const;
  plan::Wall shown(const plan::Wall& before) const;
  void commit();
  void toAll();

  session::Session& m_session;
  QLabel* m_title;
  SteadyCombo* m_kind;
  SteadyCombo* m_foundation;
  SteadyCombo* m_ground;
  QLineEdit* m_thickness;
  QLineEdit* m_free_depth;
  QPushButton* m_for_all;
  QLabel* m_message;
  bool m_filling = false;
};

}  // namespace sumpwright::stages
