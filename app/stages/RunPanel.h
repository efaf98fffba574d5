#pragma once
// The stage Run beside the plan: the drill section with what passes and what fails, the run in a
// few lines, and the fields to change it.

#include <QGridLayout>
#include <QLabel>
#include <QScrollArea>
#include <QWidget>
#include <optional>
#include <vector>

#include "build/DrillSection.h"
#include "session/SuctionDesk.h"
#include "stages/ActionButton.h"
#include "stages/DrawnView.h"
#include "stages/FactForm.h"
#include "stages/RunText.h"

class QVBoxLayout;

namespace sumpwright::stages {

/// Those of the window's actions that the panel's buttons press.
struct RunActions {
  QAction* best = nullptr;
};

class SignLabel;

class RunPanel final : public QWidget {
  Q_OBJECT

 public:
  RunPanel(session::Session& session, session::SuctionDesk& suction, const RunActions& actions,
           QWidget* parent = nullptr);

  /// Of the sump being sited, where it stands now; nothing without one.
  const std::optional<build::DrillSection>& section() const { return m_section; }
  const build::CableAnswer& cable() const { return m_cable; }
  QString word() const { return m_word->text(); }
  QString sentence() const { return m_sentence->text(); }
  /// What stands on the line of that name; empty where there is none.
  QString line(const QString& label) const;
  FactForm* form() const { return m_form; }
  DrawnView* picture() const { return m_picture; }
  void takeFocus();

 protected:
  void resizeEvent(QResizeEvent* event) override;
  void showEvent(QShowEvent* event) override;

 private:
  struct Row {
    QLabel* label;
    QLabel* value;
  };
  QWidget* makeHead();
  QWidget* makeScroll();
  void refresh();
  void refreshForm();
  void refreshHead();
  void refreshLines();
  void refreshNotes();
  const plan::Sump* sump() const;

  session::Session& m_session;
  session::SuctionDesk& m_suction;
  RunActions m_actions;
  std::optional<build::DrillSection> m_section;
  build::CableAnswer m_cable;
  bool m_old = true;  ///< not shown yet since something changed

  SignLabel* m_sign;
  QLabel* m_word;
  DrawnView* m_picture;
  QLabel* m_sentence;
  QScrollArea* m_scroll;
  QWidget* m_lines;
  QGridLayout* m_grid;
  std::vector<Row> m_rows;
  QLabel* m_change_title;
  FactForm* m_form;
  /// A title and the lines under it; both go where there are none.
  struct Block {
    QLabel* title = nullptr;
    QLabel* text = nullptr;
    void show(const QStringList& lines) const;
  };
  Block makeBlock(const QString& title, const QString& name, QVBoxLayout* column);
  Block m_supplies;
  Block m_notes;
  Block m_assumed;
  ActionButton* m_primary;
};

}  // namespace sumpwright::stages
