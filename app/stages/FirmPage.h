#pragma once
// The firm's head and terms, as they stand on every paper. Taken over as they are typed; kept in
// the firm's own file, which the command line reads too.

#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QTimer>
#include <QVBoxLayout>
#include <QWidget>

#include "session/FirmDesk.h"
#include "stages/SideNote.h"

namespace sumpwright::stages {

class FirmPage final : public QWidget {
  Q_OBJECT

 public:
  explicit FirmPage(session::FirmDesk& desk, QWidget* parent = nullptr);

  QLineEdit* name() const { return m_name; }
  QPlainTextEdit* lines() const { return m_lines; }
  QLineEdit* insurer() const { return m_insurer; }
  QLineEdit* registration() const { return m_registration; }
  QLineEdit* electrician() const { return m_electrician; }
  QPlainTextEdit* terms() const { return m_terms; }
  QLineEdit* perKwh() const { return m_per_kwh; }
  QLineEdit* currency() const { return m_currency; }
  QPushButton* chooseLogo() const { return m_choose; }
  QPushButton* removeLogo() const { return m_remove; }
  QString told() const { return m_note->isHidden() ? QString() : m_note->text(); }
  /// Takes what is typed now.
  void settle();
  /// Puts the picture of a file in place of the logo, or says why not.
  void takeLogo(const QString& path);

 Q_SIGNALS:
  void logoAsked();
  /// A field got the keys.
  void entered(QWidget* field);

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  QLineEdit* addLine(const QString& label, const QString& example);
  QPlainTextEdit* addNote(const QString& label, const QString& example, int rows);
  void addField(const QString& label, const QString& example, QWidget* field);
  void addLogo();
  void refresh();
  void take();
  void tell(const base::Problems& problems);
  void tellText(const QString& text);

  session::FirmDesk& m_desk;
  QVBoxLayout* m_column;
  SideNote* m_note;
  QLineEdit* m_name = nullptr;
  QPlainTextEdit* m_lines = nullptr;
  QLineEdit* m_insurer = nullptr;
  QLineEdit* m_registration = nullptr;
  QLineEdit* m_electrician = nullptr;
  QLabel* m_logo = nullptr;
  QPushButton* m_choose = nullptr;
  QPushButton* m_remove = nullptr;
  QPlainTextEdit* m_terms = nullptr;
  QLineEdit* m_per_kwh = nullptr;
  QLineEdit* m_currency = nullptr;
  QTimer m_soon;
  bool m_filling = false;
  bool m_typed = false;
};

}  // namespace sumpwright::stages
