#pragma once
// Places by chance of reach: the best place of each stretch that no rule refuses, put in order by
// the chance that one sump there holds the whole floor. Pointing at one shows it on plan and tape;
// pressing it moves the sump there, in one step.

#include <QLabel>
#include <QWidget>
#include <vector>

#include "session/Session.h"
#include "session/SuctionDesk.h"
#include "stages/RuleCell.h"

namespace sumpwright::stages {

class ChanceList final : public QWidget {
  Q_OBJECT

 public:
  static constexpr std::size_t kMost = 5;  ///< rows (own figure): who wants more moves the sump

  ChanceList(session::Session& session, session::SuctionDesk& desk, QWidget* parent = nullptr);

  /// Of the study and the curve as they are now.
  void refresh();
  std::size_t rows() const { return m_best.size(); }
  RuleCell* row(std::size_t index) const { return m_rows[index]; }
  const siting::BestPlace& place(std::size_t index) const { return m_best[index]; }
  QString note() const { return m_note->text(); }

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void look();
  void addRow();
  void showRow(std::size_t index);
  QString why() const;

  session::Session& m_session;
  session::SuctionDesk& m_desk;
  QLabel* m_note;
  std::vector<RuleCell*> m_rows;
  std::vector<siting::BestPlace> m_best;
  std::shared_ptr<const siting::ReachAlong> m_of;  ///< the curve that m_best is of
};

}  // namespace sumpwright::stages
