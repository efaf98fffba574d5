#pragma once
// What was looked for on site: a thing that could refuse a place and is not drawn is only known not
// to be there when somebody looked. Each row is one kind and its answer.

#include <QWidget>
#include <vector>

#include "session/Session.h"
#include "stages/Segments.h"

namespace sumpwright::stages {

class LookedPage final : public QWidget {
  Q_OBJECT

 public:
  explicit LookedPage(session::Session& session, QWidget* parent = nullptr);
  void takeFocus();
  /// In the order of plan::LookedFor.
  const std::vector<Segments*>& rows() const { return m_rows; }

 private:
  void refresh();
  void set(std::size_t row, int answer);

  session::Session& m_session;
  std::vector<Segments*> m_rows;
};

}  // namespace sumpwright::stages
