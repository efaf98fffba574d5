#pragma once
// Test holes with what is predicted and what was measured in each: one row a hole, the measured
// figure typed where it stands. What is typed goes into one pressure test. Predicted is what can be
// compared: for the test's own sump and flow, on the ground as it was guessed before; without a
// test for the sump as it is designed.

#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>
#include <QWidget>
#include <vector>

#include "session/Session.h"
#include "session/SuctionDesk.h"

namespace sumpwright::stages {

class HoleTable final : public QWidget {
  Q_OBJECT

 public:
  HoleTable(session::Session& session, session::SuctionDesk& desk, QWidget* parent = nullptr);

  /// Into which test figures are typed; empty: the next figure begins one.
  void setTest(const std::string& test);
  const std::string& test() const { return m_test; }
  void refresh();
  int rows() const { return static_cast<int>(m_shown); }
  QString predicted(int row) const {
    return m_rows[static_cast<std::size_t>(row)].predicted->text();
  }
  /// What the predicted figures are for.
  QString predictedHead() const { return m_predicted->text(); }
  /// Where the sump of the test stood; empty without a test.
  QString stood() const { return m_stood->text(); }
  QLineEdit* measured(int row) const { return m_rows[static_cast<std::size_t>(row)].measured; }

  /// What stands under a row; empty where nothing does.
  QString noteUnder(int row) const { return m_rows[static_cast<std::size_t>(row)].note->text(); }

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 Q_SIGNALS:
  void testBegun(const std::string& test);

 private:
  struct Row {
    QLabel* name;
    QLabel* predicted;
    QLineEdit* measured;
    QLabel* note;  ///< why what is typed is not taken; empty: it is
    std::string hole;
  };
  void addRow();
  static void letGo(Row& row);
  static void refuse(Row& row, const QString& why);
  void take(std::size_t row);
  void refreshStood(const plan::PressureTest* test);
  void refreshHeads(const plan::PressureTest* test);
  const siting::ExpectedTest* expected(const plan::PressureTest* test) const;
  std::optional<double> predictedIn(const plan::TestHole& hole,
                                    const plan::PressureTest* test) const;

  session::Session& m_session;
  session::SuctionDesk& m_desk;
  QGridLayout* m_grid;
  QLabel* m_stood;
  QLabel* m_predicted = nullptr;  ///< heading, with the flow it is for
  QLabel* m_measured = nullptr;   ///< heading, with the unit
  std::vector<Row> m_rows;
  std::size_t m_shown = 0;
  std::string m_test;
};

}  // namespace sumpwright::stages
