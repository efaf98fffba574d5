#pragma once
// What was looked for on site: a thing that could refuse a place and is not drawn is only known not
// to be there when somebody looked. Each row is one kind and its answer.

#include <QLabel>
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
  /// Puts the cursor into the row of that place in the job file; false: none.
  bool takeFocusAt(const std::string& pointer);
  /// What stands under a row: how many of its kind are drawn; empty where none is.
  QString drawnText(std::size_t row) const;

 Q_SIGNALS:
  /// One of a kind was drawn that was said not to be there, so that it now reads as there; empty:
  /// that is no more so.
  void foundAfterAll(const QString& kind);

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void refresh();
  void watchFound(std::size_t row, plan::Looked answer);
  void set(std::size_t row, int answer);

  session::Session& m_session;
  std::vector<Segments*> m_rows;
  std::vector<QLabel*> m_drawn;
  std::vector<std::size_t> m_counts;   ///< drawn of each kind when it was shown last
  std::optional<std::size_t> m_found;  ///< the row told last by foundAfterAll()
  std::size_t m_row_in_hand = 0;
  int m_gesture = 0;  ///< of the row in hand: passing over an answer is no step of its own
};

}  // namespace sumpwright::stages
