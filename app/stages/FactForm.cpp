#include "stages/FactForm.h"

#include <QApplication>
#include <QKeyEvent>
#include <cmath>

#include "paint/Look.h"
#include "stages/SitingText.h"
#include "stages/SteadyCombo.h"
#include "stages/SurveyText.h"
#include "stages/ThingText.h"
#include "stages/TypedText.h"
#include "tools/ListText.h"

namespace sumpwright::stages {

namespace {

constexpr int kMostText = 2000;           // own figure: a line, not a report
constexpr int kMostListText = 1'000'000;  // own figure: 10,000 points as typed

tools::BareUnit bareUnitOf(const plan::Job& job) {
  return job.display_units == plan::DisplayUnits::imperial ? tools::BareUnit::foot
                                                           : tools::BareUnit::metre;
}

QString textIn(const QWidget* field) {
  if (const auto* line = qobject_cast<const QLineEdit*>(field)) return line->text().trimmed();
  if (const auto* note = qobject_cast<const QPlainTextEdit*>(field)) {
    return note->toPlainText().trimmed();
  }
  return {};
}

void putText(QWidget* field, const QString& text) {
  if (textIn(field) == text) return;
  if (auto* line = qobject_cast<QLineEdit*>(field)) {
    line->setText(text);
    if (!line->hasFocus()) line->setCursorPosition(0);  // the beginning says more than the end
  }
  if (auto* note = qobject_cast<QPlainTextEdit*>(field)) note->setPlainText(text);
}

bool endsIn(const std::string& pointer, const std::string& key) {
  if (pointer == key) return true;
  // "/plan/services/0/run_m/2" is in "run_m".
  const std::string within = (key.starts_with('/') ? "" : "/") + key;
  const auto at = pointer.find(within);
  if (at == std::string::npos) return false;
  const auto end = at + within.size();
  return end == pointer.size() || pointer[end] == '/';
}

}  // namespace

FactForm::FactForm(session::Session& session, const QString& name, QWidget* parent)
    : QWidget(parent), m_session(session), m_grid(new QGridLayout(this)) {
  setAccessibleName(name);
  m_grid->setContentsMargins(0, 0, 0, 0);
  m_grid->setHorizontalSpacing(8);
  m_grid->setVerticalSpacing(6);
  m_grid->setColumnStretch(1, 1);
}

void FactForm::setFacts(std::vector<Fact> facts, const std::string& owner) {
  const bool same = std::equal(facts.begin(), facts.end(), m_facts.begin(), m_facts.end(),
                               [](const Fact& a, const Fact& b) { return a.key == b.key; });
  m_facts = std::move(facts);
  if (!same) rebuild();
  if (owner != m_owner) {
    for (Row& row : m_rows) row.unread = false;
  }
  m_owner = owner;
  refresh();
}

void FactForm::rebuild() {
  for (Row& row : m_rows) {
    for (QWidget* part : std::initializer_list<QWidget*>{row.label, row.field, row.note}) {
      part->removeEventFilter(this);
      part->disconnect(this);
      part->hide();
      m_grid->removeWidget(part);
      part->deleteLater();  // it may be the one whose signal brought us here
    }
  }
  m_rows.assign(m_facts.size(), Row());
  const int label_width = qRound(92 * paint::uiScale(font()));
  QWidget* before = this;  // new fields would come last in the window
  for (std::size_t i = 0; i < m_facts.size(); ++i) {
    Row& row = m_rows[i];
    const int at = static_cast<int>(2 * i);
    row.label = new QLabel(m_facts[i].label, this);
    row.label->setProperty("tone", QStringLiteral("second"));
    row.label->setWordWrap(true);
    row.label->setFixedWidth(label_width);
    row.field = makeField(i);
    row.note = new QLabel(this);
    row.note->setWordWrap(true);
    row.note->hide();
    setTabOrder(before, row.field);
    before = row.field;
    m_grid->addWidget(row.label, at, 0);
    m_grid->addWidget(row.field, at, 1);
    m_grid->addWidget(row.note, at + 1, 0, 1, 2);
  }
}

QWidget* FactForm::makeField(std::size_t i) {
  const Fact& fact = m_facts[i];
  QWidget* made = nullptr;
  if (fact.kind == FactKind::choice) {
    auto* box = new SteadyCombo(this);
    box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    box->setMinimumContentsLength(6);
    connect(box, &QComboBox::activated, this, [this, i](int index) { commitChoice(i, index); });
    made = box;
  } else if (fact.kind == FactKind::note) {
    auto* note = new QPlainTextEdit(this);
    note->setTabChangesFocus(true);
    note->setFixedHeight(qRound(76 * paint::uiScale(font())));
    made = note;
  } else {
    auto* line = new QLineEdit(this);
    // A list may be of as many points as a job file holds: cut short it would lose them.
    line->setMaxLength(fact.kind == FactKind::list ? kMostListText : kMostText);
    connect(line, &QLineEdit::editingFinished, this, [this, i] { commitText(i); });
    made = line;
  }
  made->setAccessibleName(fact.says);
  made->setToolTip(fact.example.isEmpty() ? fact.says : tr("%1: %2").arg(fact.says, fact.example));
  made->installEventFilter(this);
  return made;
}

void FactForm::refresh() {
  if (!m_session.hasJob()) return;
  for (std::size_t i = 0; i < m_rows.size(); ++i) showRow(i);
}

QString FactForm::shown(const Fact& fact) const {
  const plan::Job& job = m_session.job();
  const FactValue value = fact.get(job);
  if (const auto* text = std::get_if<std::string>(&value)) return QString::fromStdString(*text);
  if (const auto* whole = std::get_if<int>(&value)) return QString::number(*whole);
  const auto* number = std::get_if<double>(&value);
  if (number == nullptr) return {};
  const tools::AirUnits air = airUnitsOf(job);
  // A figure that was not typed in these units would show all the digits of the other ones.
  const int digits = air == tools::AirUnits::metric ? 6 : 4;
  if (fact.kind == FactKind::pressure) {
    return QString::fromStdString(tools::typedPressure(*number, air, digits));
  }
  if (fact.kind == FactKind::flow) {
    return QString::fromStdString(tools::typedFlow(*number, air, digits));
  }
  if (fact.kind == FactKind::bearing || fact.kind == FactKind::number) {
    return QString::number(*number, 'g', 6);
  }
  return typedLength(*number, job);
}

QString FactForm::labelled(const Fact& fact, const QString& name) const {
  const tools::AirUnits air = airUnitsOf(m_session.job());
  const char* unit = fact.kind == FactKind::pressure ? tools::pressureUnit(air)
                     : fact.kind == FactKind::flow   ? tools::flowUnit(air)
                                                     : nullptr;
  if (unit == nullptr) return name;
  return tr("%1, %2", "figure, unit").arg(name, QString::fromUtf8(unit));
}

QString FactForm::unknown(const Fact& fact) const {
  const bool taken = fact.kind == FactKind::pressure && fact.taken > 0.0;
  return taken ? fact.unknown.arg(pressure(fact.taken, m_session.job())) : fact.unknown;
}

void FactForm::showRow(std::size_t i) {
  Row& row = m_rows[i];
  const Fact& fact = m_facts[i];
  const bool applies = !fact.applies || fact.applies(m_session.job());
  row.label->setVisible(applies);
  row.field->setVisible(applies);
  if (!applies) return hideNote(row, {});
  row.label->setText(labelled(fact, fact.label));
  row.field->setAccessibleName(labelled(fact, fact.says));
  if (row.unread) return;  // it still has to be put right
  const FactValue value = fact.get(m_session.job());
  bool known = !std::holds_alternative<std::monostate>(value);
  m_filling = true;
  if (auto* box = qobject_cast<QComboBox*>(row.field)) {
    QStringList items;
    for (int k = 0; k < box->count(); ++k) items << box->itemText(k);
    if (items != fact.choices) {
      box->clear();
      box->addItems(fact.choices);
    }
    const int* chosen = std::get_if<int>(&value);
    box->setCurrentIndex(chosen == nullptr ? -1 : *chosen);
    known = chosen != nullptr && *chosen > 0;
  } else {
    putText(row.field, shown(fact));
    row.filled = textIn(row.field);
    if (auto* line = qobject_cast<QLineEdit*>(row.field)) {
      line->setPlaceholderText(fact.required ? QString()
                               : fact.kind == FactKind::text && !fact.example.isEmpty()
                                   ? tr("as %1").arg(fact.example)
                               : fact.kind == FactKind::text ? tr("not said")
                               : fact.kind == FactKind::list ? fact.example
                                                             : tr("not known"));
    }
  }
  m_filling = false;
  const auto told = m_told.find(fact.key);
  if (!known && !fact.unknown.isEmpty()) return showNote(row, unknown(fact), false);
  if (told != m_told.end()) return showNote(row, told->second, false);
  hideNote(row, unknown(fact));
}

/// What is taken while a value is not known goes when one is typed; its place stays, so that the
/// fields below do not move under the hand.
void FactForm::hideNote(Row& row, const QString& keeps_room_for) {
  QSizePolicy keeps = row.note->sizePolicy();
  keeps.setRetainSizeWhenHidden(!keeps_room_for.isEmpty());
  row.note->setSizePolicy(keeps);
  row.note->setText(keeps_room_for);
  row.note->hide();
}

void FactForm::showNote(Row& row, const QString& text, bool warning) {
  row.note->setText(text);
  setTone(row.note, warning);
  row.note->show();
}

std::optional<FactValue> FactForm::read(const Fact& fact, const QString& text, QString& why) const {
  if (text.isEmpty()) {
    if (!fact.required) return FactValue();
    why = tr("This cannot be left empty.");
    return std::nullopt;
  }
  const tools::BareUnit bare = bareUnitOf(m_session.job());
  switch (fact.kind) {
    case FactKind::length:
    case FactKind::level: {
      const auto reading = fact.kind == FactKind::level
                               ? tools::readLevel(text.toStdString(), bare)
                               : tools::readLength(text.toStdString(), bare);
      if (reading.ok()) return FactValue(reading.metres.front());
      why = reading.fault == tools::LengthFault::ambiguous
                ? tr("“%1” can mean two things: write its decimals with a dot.").arg(text)
            : fact.kind == FactKind::level
                ? tr("“%1” is no level. Type it as −0.15, -15cm or -6\".").arg(text)
                : tr("“%1” is not one length. Type it as 1.20, 120cm or 3'11\".").arg(text);
      return std::nullopt;
    }
    case FactKind::bearing: {
      bool ok = false;
      QString digits = text;
      const double degrees =
          digits.remove(QChar(0xB0)).replace(QChar(0x2212), QLatin1Char('-')).toDouble(&ok);
      if (ok && degrees >= -360.0 && degrees <= 360.0) return FactValue(degrees);
      why = tr("“%1” is no bearing. Type degrees, −360 to 360.").arg(text);
      return std::nullopt;
    }
    case FactKind::number: {
      bool ok = false;
      QString digits = text;
      const double number =
          digits.remove(QChar(0xB0)).replace(QChar(0x2212), QLatin1Char('-')).toDouble(&ok);
      if (ok && std::isfinite(number)) return FactValue(number);
      why = tr("“%1” is no number. Type digits, decimals after a dot.").arg(text);
      return std::nullopt;
    }
    case FactKind::pressure: {
      const auto pa = tools::readPressure_pa(text.toStdString(), airUnitsOf(m_session.job()));
      if (pa) return FactValue(*pa);
      why = tr("“%1” is no suction. Type it as 5, 5 Pa or 0.02 in. w.c.").arg(text);
      return std::nullopt;
    }
    case FactKind::flow: {
      const auto m3_h = tools::readFlow_m3_h(text.toStdString(), airUnitsOf(m_session.job()));
      if (m3_h) return FactValue(*m3_h);
      why = tr("“%1” is no flow. Type it as 120, 120 m³/h or 70 cfm.").arg(text);
      return std::nullopt;
    }
    case FactKind::whole: {
      bool ok = false;
      const int number = text.toInt(&ok);
      if (ok) return FactValue(number);
      why = tr("“%1” is no whole number.").arg(text);
      return std::nullopt;
    }
    case FactKind::text:
    case FactKind::note:
    case FactKind::list:
    case FactKind::choice:
      break;
  }
  return FactValue(text.toStdString());
}

/// What was only looked at is not changed: what is shown may be rounded, trimmed or cut short.
bool FactForm::isUntouched(std::size_t i) const {
  const Row& row = m_rows[i];
  const QString text = textIn(row.field);
  return text == shown(m_facts[i]) || (!row.unread && text == row.filled);
}

void FactForm::commitText(std::size_t i) {
  if (m_filling || !m_session.hasJob() || i >= m_rows.size()) return;
  Row& row = m_rows[i];
  const QString text = textIn(row.field);
  if (isUntouched(i)) {
    row.unread = false;
    return showRow(i);
  }
  QString why;
  const auto value = read(m_facts[i], text, why);
  if (value) return apply(i, *value);
  row.unread = true;
  showNote(row, why, true);
}

void FactForm::commitChoice(std::size_t i, int index) {
  if (m_filling || !m_session.hasJob() || i >= m_rows.size()) return;
  apply(i, index);
}

void FactForm::apply(std::size_t i, const FactValue& value) {
  const Fact fact = m_facts[i];  // the table may be made anew by the change
  m_rows[i].unread = false;
  const base::Problems problems =
      m_session.edit(tr("Change: %1").arg(fact.label.toLower()), fact.set(m_session.job(), value));
  if (i >= m_rows.size() || m_facts[i].key != fact.key) return;
  if (problems.empty()) {
    forgetTyping(m_rows[i].field);
    return showRow(i);
  }
  if (fact.kind == FactKind::choice) showRow(i);
  m_rows[i].unread = fact.kind != FactKind::choice;
  showNote(m_rows[i], saidNamed(problems.front().message, m_session.job()), true);
}

QWidget* FactForm::field(const std::string& key) const {
  for (std::size_t i = 0; i < m_facts.size(); ++i) {
    if (m_facts[i].key == key) return m_rows[i].field;
  }
  return nullptr;
}

QString FactForm::noteUnder(const std::string& key) const {
  for (std::size_t i = 0; i < m_facts.size(); ++i) {
    if (m_facts[i].key == key && !m_rows[i].note->isHidden()) return m_rows[i].note->text();
  }
  return {};
}

bool FactForm::takeFocusAt(const std::string& pointer) {
  const Row* best = nullptr;
  std::size_t longest = 0;
  for (std::size_t i = 0; i < m_facts.size(); ++i) {
    const std::string& key = m_facts[i].key;
    if (!endsIn(pointer, key) || key.size() <= longest || m_rows[i].field->isHidden()) continue;
    longest = key.size();
    best = &m_rows[i];
  }
  if (best == nullptr) return false;
  best->field->setFocus(Qt::OtherFocusReason);
  return true;
}

void FactForm::settle() {
  QWidget* typing = QApplication::focusWidget();
  auto* form = typing == nullptr ? nullptr : qobject_cast<FactForm*>(typing->parentWidget());
  if (form == nullptr) return;
  const std::size_t row = form->rowOf(typing);
  if (row < form->m_rows.size() && form->m_facts[row].kind != FactKind::choice) {
    form->commitText(row);
  }
}

std::size_t FactForm::rowOf(const QObject* field) const {
  for (std::size_t i = 0; i < m_rows.size(); ++i) {
    if (m_rows[i].field == field) return i;
  }
  return m_rows.size();
}

bool FactForm::eventFilter(QObject* watched, QEvent* event) {
  const std::size_t i = rowOf(watched);
  if (i >= m_rows.size()) return QWidget::eventFilter(watched, event);
  if (isWindowsUndo(m_rows[i].field, event)) return true;
  if (event->type() == QEvent::FocusIn) Q_EMIT entered(m_rows[i].field);
  if (event->type() == QEvent::FocusOut && m_facts[i].kind == FactKind::note) commitText(i);
  if (event->type() == QEvent::KeyPress && m_session.hasJob() &&
      static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape &&
      m_facts[i].kind != FactKind::choice && !isUntouched(i)) {
    m_rows[i].unread = false;  // back to what the job holds
    showRow(i);
    return true;
  }
  return QWidget::eventFilter(watched, event);
}

}  // namespace sumpwright::stages
