#include "stages/FirmPage.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QPixmap>
#include <cmath>

#include "paint/Look.h"
#include "words/Words.h"

namespace sumpwright::stages {

namespace {

constexpr int kSoon_ms = 500;  // own figure: after a word, not after a letter
constexpr int kMostFirmText = 4000;
constexpr double kLogo_px = 54.0;

QStringList linesIn(const QPlainTextEdit* field) {
  QStringList out;
  for (const QString& line : field->toPlainText().split(QLatin1Char('\n'))) {
    if (!line.trimmed().isEmpty()) out << line.trimmed();
  }
  return out;
}

std::vector<std::string> textsIn(const QPlainTextEdit* field) {
  std::vector<std::string> out;
  for (const QString& line : linesIn(field)) out.push_back(line.toStdString());
  return out;
}

std::string typedInto(const QLineEdit* field) { return field->text().trimmed().toStdString(); }

/// Never under the hands of who types in it.
void fill(QLineEdit* field, const std::string& text) {
  if (!field->hasFocus() && typedInto(field) != text) field->setText(QString::fromStdString(text));
}

void fill(QPlainTextEdit* field, const std::vector<std::string>& lines) {
  if (field->hasFocus() || textsIn(field) == lines) return;
  QStringList all;
  for (const std::string& line : lines) all << QString::fromStdString(line);
  field->setPlainText(all.join(QLatin1Char('\n')));
}

}  // namespace

FirmPage::FirmPage(session::FirmDesk& desk, QWidget* parent)
    : QWidget(parent), m_desk(desk), m_column(new QVBoxLayout(this)) {
  setAccessibleName(tr("Firm"));
  const double k = paint::uiScale(font());
  m_column->setContentsMargins(3, 3, qRound(10 * k), 3);
  m_column->setSpacing(qRound(4 * k));
  m_note = new SideNote(SideNote::Kind::warning, this);
  m_note->hide();
  m_column->addWidget(m_note);
  m_name = addLine(tr("Name"), tr("as Invented Soil Gas Works"));
  m_lines = addNote(tr("Address, telephone, mail"), tr("a line each"), 3);
  addLogo();
  m_registration = addLine(tr("Registration"), tr("not printed while empty"));
  m_insurer = addLine(tr("Insurance"), tr("with the policy's number"));
  m_electrician = addLine(tr("Registered electrician"), tr("with the number"));
  m_terms = addNote(tr("Terms, a paragraph each"),
                    tr("Empty: workmanship and parts only, and no radon level guaranteed"), 4);
  m_per_kwh = addLine(tr("Electricity, for a kWh"), tr("as 0.35"));
  m_currency = addLine(tr("Its currency"), tr("as EUR"));
  auto* hint = new QLabel(
      tr("What is empty is not printed. Have your terms read by whoever advises you."), this);
  hint->setWordWrap(true);
  hint->setProperty("tone", QStringLiteral("second"));
  hint->setFont(paint::sized(font(), 0.9));
  m_column->addWidget(hint);
  m_column->addStretch();
  m_soon.setSingleShot(true);
  m_soon.setInterval(kSoon_ms);
  connect(&m_soon, &QTimer::timeout, this, &FirmPage::take);
  connect(&desk, &session::FirmDesk::changed, this, &FirmPage::refresh);
  refresh();
}

void FirmPage::addField(const QString& label, const QString& example, QWidget* field) {
  auto* words = new QLabel(label, this);
  words->setProperty("tone", QStringLiteral("second"));
  words->setBuddy(field);
  field->setAccessibleName(label);
  field->setToolTip(example);
  field->installEventFilter(this);
  m_column->addWidget(words);
  m_column->addWidget(field);
}

QLineEdit* FirmPage::addLine(const QString& label, const QString& example) {
  auto* field = new QLineEdit(this);
  field->setMaxLength(kMostFirmText);
  field->setPlaceholderText(example);
  addField(label, example, field);
  connect(field, &QLineEdit::textEdited, this, [this] {
    m_typed = true;
    m_soon.start();
  });
  connect(field, &QLineEdit::editingFinished, this, &FirmPage::settle);
  return field;
}

QPlainTextEdit* FirmPage::addNote(const QString& label, const QString& example, int rows) {
  auto* field = new QPlainTextEdit(this);
  field->setTabChangesFocus(true);
  field->setPlaceholderText(example);
  field->setFixedHeight(qRound((20 + 19 * rows) * paint::uiScale(font())));
  addField(label, example, field);
  connect(field, &QPlainTextEdit::textChanged, this, [this] {
    if (m_filling) return;
    m_typed = true;
    m_soon.start();
  });
  return field;
}

void FirmPage::addLogo() {
  auto* words = new QLabel(tr("Logo"), this);
  words->setProperty("tone", QStringLiteral("second"));
  m_column->addWidget(words);
  m_logo = new QLabel(this);
  m_logo->setAccessibleName(tr("Logo"));
  // Its room is kept, or what is below it would move under the pointer.
  m_logo->setFixedHeight(qRound(kLogo_px * paint::uiScale(font())));
  m_logo->setProperty("tone", QStringLiteral("second"));
  m_column->addWidget(m_logo);
  auto* row = new QHBoxLayout;
  m_choose = new QPushButton(tr("Choose a picture…"), this);
  m_choose->setToolTip(tr("A PNG or JPEG file; it is copied."));
  m_remove = new QPushButton(tr("Remove"), this);
  m_remove->setAccessibleName(tr("Remove the logo"));
  row->addWidget(m_choose);
  row->addStretch();
  row->addWidget(m_remove);
  m_column->addLayout(row);
  connect(m_choose, &QPushButton::clicked, this, &FirmPage::logoAsked);
  connect(m_remove, &QPushButton::clicked, this, [this] { tell(m_desk.removeLogo()); });
}

void FirmPage::refresh() {
  const files::Firm& firm = m_desk.firm();
  const bool usable = m_desk.problems().empty();
  m_filling = true;
  fill(m_name, firm.name);
  fill(m_lines, firm.lines);
  fill(m_insurer, firm.insurer);
  fill(m_registration, firm.registration);
  fill(m_electrician, firm.electrician);
  fill(m_terms, firm.terms);
  fill(m_currency, firm.currency);
  fill(m_per_kwh,
       firm.price_per_kwh ? QString::number(*firm.price_per_kwh, 'g', 6).toStdString() : "");
  m_filling = false;
  QPixmap logo;
  if (!firm.logo.empty()) {
    logo.loadFromData(reinterpret_cast<const uchar*>(firm.logo.data()),
                      static_cast<uint>(firm.logo.size()));
  }
  const double k = paint::uiScale(font());
  if (logo.isNull()) {
    m_logo->setText(firm.lost_logo.empty()
                        ? tr("None chosen")
                        : tr("%1 cannot be read").arg(QString::fromStdString(firm.lost_logo)));
  } else {
    logo = logo.scaled(QSizeF(200 * k, kLogo_px * k).toSize() * devicePixelRatioF(),
                       Qt::KeepAspectRatio, Qt::SmoothTransformation);
    logo.setDevicePixelRatio(devicePixelRatioF());
    m_logo->setPixmap(logo);
  }
  m_remove->setEnabled(usable && !(firm.logo.empty() && firm.lost_logo.empty()));
  for (QWidget* field :
       std::initializer_list<QWidget*>{m_name, m_lines, m_insurer, m_registration, m_electrician,
                                       m_terms, m_per_kwh, m_currency, m_choose}) {
    field->setEnabled(usable);
  }
  if (!usable) tell(m_desk.problems());
  if (!m_desk.logoProblems().empty()) tell(m_desk.logoProblems());
}

void FirmPage::settle() {
  m_soon.stop();
  if (m_typed) take();
}

void FirmPage::take() {
  m_typed = false;
  if (!m_desk.problems().empty()) return;
  files::Firm firm = m_desk.firm();
  firm.name = typedInto(m_name);
  firm.lines = textsIn(m_lines);
  firm.insurer = typedInto(m_insurer);
  firm.registration = typedInto(m_registration);
  firm.electrician = typedInto(m_electrician);
  firm.terms = textsIn(m_terms);
  firm.currency = typedInto(m_currency);
  const QString typed = m_per_kwh->text().trimmed();
  bool ok = true;
  const double price = typed.isEmpty() ? 0.0 : typed.toDouble(&ok);
  ok = ok && std::isfinite(price) && price >= 0.0;
  if (ok) {
    firm.price_per_kwh.reset();
    if (!typed.isEmpty()) firm.price_per_kwh = price;
  }
  const base::Problems problems = m_desk.set(firm);
  if (problems.empty() && !ok) {
    return tellText(tr("“%1” is no price. Type digits, decimals after a dot.").arg(typed));
  }
  tell(problems);
}

void FirmPage::takeLogo(const QString& path) {
  settle();
  tell(m_desk.setLogo(path));
}

void FirmPage::tell(const base::Problems& problems) {
  QStringList lines;
  for (const base::Problem& problem : problems) {
    lines << QString::fromStdString(words::say(problem.message, words::Units::metric));
  }
  if (!m_desk.problems().empty()) {
    lines << tr(
        "Put the file right, or move it away: until then nothing of the firm is printed, "
        "and nothing is changed here.");
  }
  tellText(lines.join(QLatin1Char('\n')));
}

void FirmPage::tellText(const QString& text) {
  m_note->setText(text);
  m_note->setVisible(!text.isEmpty());
}

bool FirmPage::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() == QEvent::FocusIn) Q_EMIT entered(qobject_cast<QWidget*>(watched));
  if (event->type() == QEvent::FocusOut) settle();
  return QWidget::eventFilter(watched, event);
}

}  // namespace sumpwright::stages
