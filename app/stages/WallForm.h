#pragma once
// What is known of the wall in hand: whose it is, how thick, what it stands on, what lies outside.
// What was said of one wall can be said of all.

#include <QLabel>
#include <QPushButton>
#include <QWidget>

#include "session/Session.h"
#include "stages/FactForm.h"

namespace sumpwright::stages {

class WallForm final : public QWidget {
  Q_OBJECT

 public:
  explicit WallForm(session::Session& session, QWidget* parent = nullptr);
  /// Shows the selected wall; hides itself where none is.
  void refresh();

  FactForm* facts() const { return m_facts; }
  QComboBox* foundation() const { return m_facts->combo("foundation"); }
  QComboBox* ground() const { return m_facts->combo("ground"); }
  QLineEdit* freeDepth() const { return m_facts->line("free_depth_m"); }
  QPushButton* forAll() const { return m_for_all; }

 private:
  void toAll();

  session::Session& m_session;
  QLabel* m_title;
  FactForm* m_facts;
  QPushButton* m_for_all;
  QLabel* m_message;
};

}  // namespace sumpwright::stages
