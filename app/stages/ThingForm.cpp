#include "stages/ThingForm.h"

#include <QGridLayout>
#include <QVBoxLayout>

#include "paint/Look.h"
#include "plan/OpeningEdits.h"
#include "stages/SitingText.h"
#include "stages/SurveyText.h"
#include "stages/ThingText.h"
#include "tools/LengthText.h"

namespace sumpwright::stages {

ThingForm::ThingForm(session::Session& session, QWidget* parent)
    : QWidget(parent), m_session(session) {
  setAccessibleName(tr("The thing in hand"));
  auto* grid = new QGridLayout(this);
  grid->setContentsMargins(0, 0, 0, 0);
  grid->setSpacing(6);
  m_title = new QLabel(this);
  m_title->setFont(paint::sized(font(), 1.1, true));
  grid->addWidget(m_title, 0, 0, 1, 4);
  const auto label = [&](const QString& text) {
    auto* l = new QLabel(text, this);
    l->setProperty("tone", QStringLiteral("second"));
    return l;
  };
  m_name = new QLineEdit(this);
  m_name->setAccessibleName(tr("Name"));
  m_name->setMaxLength(200);
  grid->addWidget(label(tr("Name")), 1, 0);
  grid->addWidget(m_name, 1, 1, 1, 3);
  m_choice_label = label({});
  m_choice = new SteadyCombo(this);
  m_choice->setAccessibleName(tr("Kind"));
  grid->addWidget(m_choice_label, 2, 0);
  grid->addWidget(m_choice, 2, 1, 1, 3);
  const QString names[kLengths] = {tr("From left"), tr("Wide"), tr("Sill"), tr("Head")};
  for (int i = 0; i < kLengths; ++i) {
    m_length_labels[i] = label(names[i]);
    m_lengths[i] = new QLineEdit(this);
    m_lengths[i]->setAccessibleName(names[i]);
    grid->addWidget(m_length_labels[i], 3 + i / 2, 2 * (i % 2));
    grid->addWidget(m_lengths[i], 3 + i / 2, 2 * (i % 2) + 1);
    connect(m_lengths[i], &QLineEdit::editingFinished, this, [this, i] { commitLength(i); });
  }
  m_message = new QLabel(this);
  m_message->setWordWrap(true);
  m_message->setProperty("tone", QStringLiteral("warning"));
  grid->addWidget(m_message, 5, 0, 1, 4);
  connect(m_name, &QLineEdit::editingFinished, this, &ThingForm::commitName);
  connect(m_choice, &QComboBox::activated, this, &ThingForm::commitChoice);
  hide();
}

void ThingForm::refresh() {
  const std::string id = m_session.hasJob() ? m_session.selected() : std::string();
  const auto thing = id.empty() ? std::optional<plan::Thing>() : plan::thingOf(m_session.job(), id);
  m_id = thing ? id : std::string();
  setVisible(thing.has_value());
  if (thing) show(*thing);
}

void ThingForm::show(const plan::Thing& thing) {
  m_filling = true;
  m_message->hide();
  m_title->setText(thingKind(thing));
  const std::string name = std::visit(
      [](const auto& t) {
        if constexpr (requires { t.name; }) return t.name;
        return std::string();
      },
      thing);
  m_name->setText(QString::fromStdString(name));
  m_name->setEnabled(!std::holds_alternative<plan::InnerWall>(thing) &&
                     !std::holds_alternative<plan::InnerDoor>(thing) &&
                     !std::holds_alternative<plan::RisingWall>(thing) &&
                     !std::holds_alternative<plan::Dimension>(thing));
  showChoice(thing);
  showLengths(thing);
  m_filling = false;
}

void ThingForm::showChoice(const plan::Thing& thing) {
  const auto choice = choiceOf(thing);
  m_choice->setVisible(choice.has_value());
  m_choice_label->setVisible(choice.has_value());
  if (!choice) return;
  m_choice_label->setText(choice->label);
  m_choice->setAccessibleName(choice->label);
  m_choice->clear();
  m_choice->addItems(choice->choices);
  m_choice->setCurrentIndex(choice->chosen);
}

void ThingForm::showLengths(const plan::Thing& thing) {
  const auto* opening = std::get_if<plan::Opening>(&thing);
  std::optional<double> values[kLengths];
  if (opening != nullptr) {
    values[kOffset] = opening->at.offset_m;
    values[kWidth] = opening->width_m;
    values[kSill] = opening->sill_m;
    values[kHead] = opening->head_m;
  }
  for (int i = 0; i < kLengths; ++i) {
    m_length_labels[i]->setVisible(opening != nullptr);
    m_lengths[i]->setVisible(opening != nullptr);
    m_lengths[i]->setText(values[i] ? typedLength(*values[i], m_session.job()) : QString());
    m_lengths[i]->setPlaceholderText(i == kSill || i == kHead ? tr("not known") : QString());
  }
}

void ThingForm::say(const base::Problems& problems) {
  if (problems.empty()) return m_message->hide();
  m_message->setText(said(problems.front().message, m_session.job()));
  m_message->show();
}

void ThingForm::commitName() {
  if (m_filling || m_id.empty()) return;
  auto thing = plan::thingOf(m_session.job(), m_id);
  if (!thing) return;
  bool changed = false;
  std::visit(
      [&](auto& t) {
        if constexpr (requires { t.name; }) {
          changed = t.name != m_name->text().toStdString();
          t.name = m_name->text().toStdString();
        }
      },
      *thing);
  if (changed) say(m_session.edit(tr("Name a thing"), plan::replaceThing(m_session.job(), *thing)));
}

void ThingForm::commitChoice(int index) {
  if (m_filling || m_id.empty()) return;
  const auto thing = plan::thingOf(m_session.job(), m_id);
  if (!thing) return;
  const plan::Thing changed = withChoice(*thing, index);
  if (changed == *thing) return;
  say(m_session.edit(tr("Change a thing"), plan::replaceThing(m_session.job(), changed)));
}

void ThingForm::commitLength(int which) {
  if (m_filling || m_id.empty()) return;
  const auto thing = plan::thingOf(m_session.job(), m_id);
  const auto* opening = thing ? std::get_if<plan::Opening>(&*thing) : nullptr;
  if (opening == nullptr) return;
  const QString text = m_lengths[which]->text().trimmed();
  const std::optional<double> now[kLengths] = {opening->at.offset_m, opening->width_m,
                                               opening->sill_m, opening->head_m};
  // What was only looked at is not changed: what is shown may be rounded.
  if (text == (now[which] ? typedLength(*now[which], m_session.job()) : QString())) return;
  const bool feet = m_session.job().display_units == plan::DisplayUnits::imperial;
  const tools::LengthReading reading =
      tools::readLength(text.toStdString(), feet ? tools::BareUnit::foot : tools::BareUnit::metre);
  const bool may_be_empty = which == kSill || which == kHead;
  if (!reading.ok() && !(may_be_empty && text.isEmpty())) {
    m_message->setText(tr("“%1” is not one length. Type it as 1.20, 120cm or 3'11\".").arg(text));
    return m_message->show();
  }
  plan::Opening changed = *opening;
  const plan::Job& job = m_session.job();
  switch (which) {
    case kOffset:
      return say(m_session.edit(tr("Move an opening"),
                                plan::placeOpening(job, m_id, opening->at.ring, opening->at.edge,
                                                   plan::Side::left, reading.metres.front())));
    case kWidth:
      return say(m_session.edit(
          tr("Change a width"),
          plan::setOpeningWidth(job, m_id, reading.metres.front(), plan::Side::left)));
    case kSill:
      changed.sill_m = text.isEmpty() ? std::optional<double>() : reading.metres.front();
      break;
    default:
      changed.head_m = text.isEmpty() ? std::optional<double>() : reading.metres.front();
      break;
  }
  say(m_session.edit(tr("Change a height"), plan::replaceThing(job, changed)));
}

}  // namespace sumpwright::stages
