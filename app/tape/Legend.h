#pragma once
// What the bands mean and how much wall is in each state: legend and totals in one row. States with
// no wall at all are left out when room is short.

#include <QWidget>

#include "session/Session.h"

namespace sumpwright::tape {

class Legend final : public QWidget {
  Q_OBJECT

 public:
  explicit Legend(session::Session& session, QWidget* parent = nullptr);
  QSize sizeHint() const override;
  QSize minimumSizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  void refresh();

  struct Entry {
    rules::State state;
    QString text;
    bool present;
  };
  session::Session& m_session;
  std::vector<Entry> m_entries;
};

}  // namespace sumpwright::tape
