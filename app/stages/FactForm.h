#pragma once
// A form made from a table of facts. Each change is one step of undo; what cannot be read stays
// where it was typed, with what is wrong under it; what is not known says what is taken instead.

#include <QComboBox>
#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QWidget>
#include <map>

#include "session/Session.h"
#include "stages/Fact.h"

namespace sumpwright::stages {

class FactForm final : public QWidget {
  Q_OBJECT

 public:
  FactForm(session::Session& session, const QString& name, QWidget* parent = nullptr);

  /// Shows these facts; a table with the keys of the one before keeps its fields. `owner` is whose
  /// facts they are: with another one, what was typed and not understood is let go.
  void setFacts(std::vector<Fact> facts, const std::string& owner);
  /// What the plan check says of a fact, by key; shown where nothing else is.
  void setTold(std::map<std::string, QString> told) { m_told = std::move(told); }
  /// From the job as it stands.
  void refresh();

  const std::vector<Fact>& facts() const { return m_facts; }
  /// The field of a fact; nullptr where there is none.
  QWidget* field(const std::string& key) const;
  QLineEdit* line(const std::string& key) const { return qobject_cast<QLineEdit*>(field(key)); }
  QComboBox* combo(const std::string& key) const { return qobject_cast<QComboBox*>(field(key)); }
  /// What stands under a field; empty where nothing does.
  QString noteUnder(const std::string& key) const;
  /// Puts the cursor into the field that a place of the job file ends in; false: there is none.
  bool takeFocusAt(const std::string& pointer);
  /// Takes what is typed in the field that has the keys, of whatever form: before the job is saved,
  /// put on paper or let go of, nobody should have to think of Enter.
  static void settle();

 Q_SIGNALS:
  /// A field got the keys.
  void entered(QWidget* field);

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  struct Row {
    QLabel* label = nullptr;
    QWidget* field = nullptr;
    QLabel* note = nullptr;
    QString filled;  ///< as the field holds what it was filled with last
    bool unread = false;
  };
  void rebuild();
  QWidget* makeField(std::size_t row);
  void showRow(std::size_t row);
  static void hideNote(Row& row, const QString& keeps_room_for);
  void showNote(Row& row, const QString& text, bool warning);
  QString shown(const Fact& fact) const;
  /// With its unit where it has one of those on display.
  QString labelled(const Fact& fact, const QString& name) const;
  QString unknown(const Fact& fact) const;
  std::optional<FactValue> read(const Fact& fact, const QString& text, QString& why) const;
  bool isUntouched(std::size_t row) const;
  void commitText(std::size_t row);
  void commitChoice(std::size_t row, int index);
  void apply(std::size_t row, const FactValue& value);
  std::size_t rowOf(const QObject* field) const;

  session::Session& m_session;
  QGridLayout* m_grid;
  std::vector<Fact> m_facts;
  std::vector<Row> m_rows;
  std::string m_owner;
  std::map<std::string, QString> m_told;
  bool m_filling = false;
};

}  // namespace sumpwright::stages
