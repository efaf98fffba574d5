#pragma once
// Recording why a refused place is accepted: which rule, what it must rest on, reason, name, date.
// A side note, not a dialog: the plan stays in view.

#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QWidget>
#include <vector>

#include "session/Session.h"

namespace sumpwright::stages {

class WaiverForm final : public QWidget {
  Q_OBJECT

 public:
  explicit WaiverForm(session::Session& session, QWidget* parent = nullptr);
  /// Opens for the findings here that may be waived; `rule` comes first when it is one of them.
  void open(const std::string& rule = {});
  /// What may be waived at the place now.
  static std::vector<rules::Finding> waivable(const session::Session& session);

  QComboBox* which() const { return m_which; }
  QPlainTextEdit* reason() const { return m_reason; }
  QLineEdit* name() const { return m_name; }
  QLineEdit* date() const { return m_date; }
  QPushButton* record() const { return m_record; }
  QString message() const { return m_message->text(); }

 Q_SIGNALS:
  void closed();

 protected:
  void keyPressEvent(QKeyEvent* event) override;

 private:
  void submit();
  void chooseFinding(int index);
  void close();

  session::Session& m_session;
  std::vector<rules::Finding> m_findings;
  QComboBox* m_which;
  QLabel* m_evidence;
  QPlainTextEdit* m_reason;
  QLineEdit* m_name;
  QLineEdit* m_date;
  QLabel* m_message;
  QPushButton* m_record;
};

}  // namespace sumpwright::stages
