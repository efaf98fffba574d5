#pragma once
// Address, what is known of the house, whether it is saved, undo and redo, the client plan.

#include <QAction>
#include <QLabel>
#include <QWidget>

#include "session/Session.h"
#include "stages/ActionButton.h"

namespace sumpwright::window {

class TopRow final : public QWidget {
  Q_OBJECT

 public:
  TopRow(session::Session& session, QAction* undo, QAction* redo, QAction* paper,
         QWidget* parent = nullptr);
  QString savedText() const { return m_saved->text(); }
  /// The client plan's button is for the other stages.
  void setPaperShown(bool shown) { m_paper->setVisible(!shown); }

 protected:
  void resizeEvent(QResizeEvent* event) override;

 private:
  void refreshJob();
  void refreshSaved();
  void elide();

  session::Session& m_session;
  QString m_address_text;
  QString m_subtitle_text;
  QWidget* m_texts;
  QLabel* m_address;
  QLabel* m_subtitle;
  QLabel* m_saved;
  stages::ActionButton* m_paper;
};

}  // namespace sumpwright::window
