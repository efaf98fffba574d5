#pragma once
// Which fan suits: the fans of all tables on the pipes and the ground of the design, best first.
// Pressing one takes it, in one step.

#include <QLabel>
#include <QWidget>
#include <vector>

#include "price/RunningYear.h"
#include "session/Session.h"
#include "session/SuctionDesk.h"
#include "stages/FanCell.h"

namespace sumpwright::stages {

class FanList final : public QWidget {
  Q_OBJECT

 public:
  static constexpr std::size_t kMost = 6;  ///< rows (own figure); the one in use beside them

  FanList(session::Session& session, session::SuctionDesk& desk, QWidget* parent = nullptr);

  /// Of the answer as it is now. `tariff`: what a kilowatt hour costs.
  void refresh(const price::Tariff& tariff);
  std::size_t rows() const { return m_offers.size(); }
  FanCell* row(std::size_t index) const { return m_rows[index].cell; }
  QString remark(std::size_t index) const { return m_rows[index].remark->text(); }
  const siting::FanOffer& offer(std::size_t index) const { return m_offers[index]; }
  QString note() const { return m_note->text(); }

 private:
  struct Row {
    FanCell* cell;
    QLabel* remark;
  };
  void addRow();
  void take(std::size_t index);
  void look();
  void showRow(std::size_t index, const price::Tariff& tariff);
  QString why() const;
  QString costText(const siting::FanOffer& offer, const price::Tariff& tariff) const;

  session::Session& m_session;
  session::SuctionDesk& m_desk;
  QLabel* m_note;
  std::vector<Row> m_rows;
  std::vector<siting::FanOffer> m_offers;
};

}  // namespace sumpwright::stages
