// PicturePage: how it is put together.

#include <QGridLayout>
#include <QVBoxLayout>

#include "paint/Look.h"
#include "stages/PicturePage.h"

namespace sumpwright::stages {

namespace {

QLabel* explaining(const QString& text, QWidget* parent) {
  auto* label = new QLabel(text, parent);
  label->setWordWrap(true);
  label->setProperty("tone", QStringLiteral("second"));
  return label;
}

QVBoxLayout* plainColumn(QWidget* parent) {
  auto* column = new QVBoxLayout(parent);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(8);
  return column;
}

}  // namespace

PicturePage::PicturePage(session::Session& session, session::PictureDesk& desk, QWidget* parent)
    : QWidget(parent), m_session(session), m_desk(desk) {
  setAccessibleName(tr("Picture under the plan"));
  QVBoxLayout* column = plainColumn(this);
  m_title = new QLabel(this);
  m_title->setFont(paint::sized(font(), 1.6, true));
  column->addWidget(m_title);
  m_file = explaining({}, this);
  column->addWidget(m_file);
  column->addWidget(makeReading());
  m_warning = new SideNote(SideNote::Kind::warning, this);
  m_warning->hide();
  column->addWidget(m_warning);
  m_note = new SideNote(SideNote::Kind::information, this);
  m_note->hide();
  column->addWidget(m_note);
  m_body = new QStackedWidget(this);
  m_message = new QLabel(this);
  m_message->setWordWrap(true);
  m_message->setProperty("tone", QStringLiteral("warning"));
  m_message->hide();
  for (QWidget* part : {makeEmpty(), makeSettings(), makeScale(), makeStraighten()}) {
    m_body->addWidget(part);
  }
  column->addWidget(m_message);
  column->addWidget(m_body, 1);
  connect(m_warning, &SideNote::curePressed, this, [this] {
    if (m_desk.problems().front().message.id == "underlay.given-up") return m_desk.lookAgain();
    Q_EMIT findAsked();
  });
  connect(&desk, &session::PictureDesk::changed, this, &PicturePage::refresh);
  connect(&desk, &session::PictureDesk::layerChanged, this, &PicturePage::refresh);
  connect(&desk, &session::PictureDesk::marksChanged, this, &PicturePage::refreshTool);
  refresh();
}

QWidget* PicturePage::makeReading() {
  m_reading = new QWidget(this);
  QVBoxLayout* column = plainColumn(m_reading);
  m_reading_text = new QLabel(m_reading);
  column->addWidget(m_reading_text);
  auto* row = new QHBoxLayout;
  auto* bar = new QProgressBar(m_reading);
  bar->setRange(0, 0);  // a decoder does not tell how far it is
  bar->setTextVisible(false);
  bar->setAccessibleName(tr("The picture is being read"));
  m_stop = new QPushButton(tr("Cancel"), m_reading);
  row->addWidget(bar, 1);
  row->addWidget(m_stop);
  column->addLayout(row);
  m_reading->hide();
  connect(m_stop, &QPushButton::clicked, this, [this] {
    m_desk.giveUpReading();
    takeFocus();
  });
  return m_reading;
}

QWidget* PicturePage::makeEmpty() {
  auto* part = new QWidget(m_body);
  QVBoxLayout* column = plainColumn(part);
  column->addWidget(
      explaining(tr("Lay a plan, a sketch or a photo of one under the drawing, and trace it: PNG, "
                    "JPEG, SVG, or a page of a PDF. It can also be dropped onto the window."),
                 part));
  m_choose = new QPushButton(tr("Choose a picture…"), part);
  m_choose->setProperty("role", QStringLiteral("primary"));
  column->addWidget(m_choose);
  column->addSpacing(12);
  column->addWidget(
      explaining(tr("Or take the outline itself from a DXF drawing or a GeoJSON map."), part));
  m_import = new QPushButton(tr("Take an outline…"), part);
  column->addWidget(m_import);
  column->addStretch();
  connect(m_choose, &QPushButton::clicked, this, &PicturePage::chooseAsked);
  connect(m_import, &QPushButton::clicked, this, &PicturePage::importAsked);
  return part;
}

QWidget* PicturePage::makeSettings() {
  auto* part = new QWidget(m_body);
  QVBoxLayout* column = plainColumn(part);
  auto* grid = new QGridLayout;
  grid->setHorizontalSpacing(10);
  grid->setVerticalSpacing(8);
  grid->setColumnStretch(1, 1);
  m_pages = new QWidget(part);
  auto* pages = new QHBoxLayout(m_pages);
  pages->setContentsMargins(0, 0, 0, 0);
  m_page = new QSpinBox(m_pages);
  m_page->setAccessibleName(tr("Page"));
  m_page->setKeyboardTracking(false);
  m_of_pages = new QLabel(m_pages);
  pages->addWidget(new QLabel(tr("Page"), m_pages));
  pages->addWidget(m_page);
  pages->addWidget(m_of_pages, 1);
  m_shown = new QCheckBox(tr("Show it"), part);
  m_locked = new QCheckBox(tr("Lock its place"), part);
  m_fade = new QSlider(Qt::Horizontal, part);
  m_fade->setRange(0, 95);  // wholly faded is hidden: that is what "Show it" is for
  m_fade->setPageStep(10);
  m_fade->setAccessibleName(tr("Fade"));
  m_turn = new QDoubleSpinBox(part);
  m_turn->setRange(-180.0, 180.0);
  m_turn->setDecimals(1);
  m_turn->setSuffix(QStringLiteral("°"));
  m_turn->setWrapping(true);
  m_turn->setKeyboardTracking(false);
  m_turn->setAccessibleName(tr("Turn, degrees counter-clockwise"));
  auto* turns = new QHBoxLayout;
  turns->addWidget(m_turn, 1);
  for (const int quarter : {1, -1}) {
    auto* button = new QPushButton(quarter > 0 ? QStringLiteral("↺") : QStringLiteral("↻"), part);
    const QString name = quarter > 0 ? tr("A quarter to the left") : tr("A quarter to the right");
    button->setAccessibleName(name);
    button->setToolTip(name);
    connect(button, &QPushButton::clicked, this, [this, quarter] {
      if (m_turn->isEnabled()) m_desk.turnTo(m_desk.underlay()->turn_deg + 90.0 * quarter);
    });
    turns->addWidget(button);
  }
  grid->addWidget(m_pages, 0, 0, 1, 2);
  auto* checks = new QHBoxLayout;
  checks->addWidget(m_shown);
  checks->addWidget(m_locked);
  checks->addStretch();
  grid->addLayout(checks, 1, 0, 1, 2);
  grid->addWidget(new QLabel(tr("Fade"), part), 2, 0);
  grid->addWidget(m_fade, 2, 1);
  grid->addWidget(new QLabel(tr("Turn"), part), 3, 0);
  grid->addLayout(turns, 3, 1);
  column->addLayout(grid);
  column->addSpacing(4);
  m_scale = new QPushButton(tr("Scale by a known length…"), part);
  m_straighten = new QPushButton(tr("Straighten a photo…"), part);
  column->addWidget(m_scale);
  column->addWidget(m_straighten);
  column->addStretch();
  m_trace = new QPushButton(tr("Trace it"), part);
  m_trace->setProperty("role", QStringLiteral("primary"));
  m_trace->setToolTip(tr("Locks the picture and goes to the outline"));
  m_another = new QPushButton(tr("Another…"), part);
  m_another->setAccessibleName(tr("Another picture"));
  m_remove = new QPushButton(tr("Remove"), part);
  m_remove->setAccessibleName(tr("Remove the picture"));
  auto* ends = new QHBoxLayout;
  ends->addWidget(m_trace, 1);
  ends->addWidget(m_another);
  ends->addWidget(m_remove);
  column->addLayout(ends);

  connect(m_page, &QSpinBox::valueChanged, this, [this](int n) { m_desk.showPage(n - 1); });
  connect(m_shown, &QCheckBox::toggled, this, [this](bool on) { m_desk.setShown(on); });
  connect(m_locked, &QCheckBox::toggled, this, [this](bool on) { m_desk.setLocked(on); });
  connect(m_fade, &QSlider::sliderPressed, this,
          [this] { m_fade_gesture = m_session.newGesture(); });
  connect(m_fade, &QSlider::sliderReleased, this, [this] { m_fade_gesture = 0; });
  connect(m_fade, &QSlider::valueChanged, this,
          [this](int percent) { m_desk.setFade(percent / 100.0, m_fade_gesture); });
  connect(m_turn, &QDoubleSpinBox::valueChanged, this,
          [this](double degrees) { m_desk.turnTo(degrees); });
  connect(m_scale, &QPushButton::clicked, this, [this] {
    m_desk.begin(Tool::scale);
    takeFocus();
  });
  connect(m_straighten, &QPushButton::clicked, this, [this] {
    m_desk.begin(Tool::straighten);
    takeFocus();
  });
  connect(m_trace, &QPushButton::clicked, this, [this] {
    m_desk.setLocked(true);
    Q_EMIT traceAsked();
  });
  connect(m_another, &QPushButton::clicked, this, &PicturePage::chooseAsked);
  connect(m_remove, &QPushButton::clicked, this, [this] {
    m_desk.remove();
    takeFocus();
  });
  return part;
}

QLineEdit* PicturePage::makeLength(const QString& name, QWidget* parent) {
  auto* line = new QLineEdit(parent);
  line->setAccessibleName(name);
  line->setFont(paint::sized(font(), 1.4, true));
  line->installEventFilter(this);
  connect(line, &QLineEdit::returnPressed, this, &PicturePage::apply);
  connect(line, &QLineEdit::textEdited, this, [this] { say({}); });
  return line;
}

QHBoxLayout* PicturePage::makeEnds(QPushButton*& apply, QPushButton*& give_up, QWidget* parent) {
  auto* row = new QHBoxLayout;
  apply->setProperty("role", QStringLiteral("primary"));
  give_up = new QPushButton(tr("Give up"), parent);
  give_up->setToolTip(tr("Leaves the picture as it was  (Esc)"));
  row->addWidget(apply, 1);
  row->addWidget(give_up);
  connect(apply, &QPushButton::clicked, this, &PicturePage::apply);
  connect(give_up, &QPushButton::clicked, this, [this] {
    m_desk.giveUp();
    takeFocus();
  });
  return row;
}

QWidget* PicturePage::makeScale() {
  auto* part = new QWidget(m_body);
  QVBoxLayout* column = plainColumn(part);
  column->addWidget(
      explaining(tr("Drag a line on the picture along something whose length you know: a dimension "
                    "line, a scale bar, the longest wall. Then type the length."),
                 part));
  m_length_label = explaining({}, part);
  column->addWidget(m_length_label);
  m_length = makeLength(tr("True length of the line"), part);
  column->addWidget(m_length);
  column->addWidget(explaining(tr("And turned so that the line is"), part));
  m_lie = new Segments(tr("How the line lies"), {tr("as it is"), tr("level"), tr("upright")}, part);
  m_lie->show(0);
  column->addWidget(m_lie);
  column->addSpacing(4);
  m_apply[0] = new QPushButton(tr("Scale  (Enter)"), part);
  column->addLayout(makeEnds(m_apply[0], m_give_up[0], part));
  column->addStretch();
  return part;
}

QWidget* PicturePage::makeStraighten() {
  auto* part = new QWidget(m_body);
  QVBoxLayout* column = plainColumn(part);
  column->addWidget(
      explaining(tr("Drag the corners 1 to 4 onto something that is a rectangle in truth, the "
                    "larger the better: the house, a room, the sheet itself. Then type its sides. "
                    "A sheet of paper gives the shape; scale it afterwards."),
                 part));
  auto* grid = new QGridLayout;
  grid->setHorizontalSpacing(10);
  m_width_label = explaining({}, part);
  m_width = makeLength(tr("From corner 1 to corner 2"), part);
  m_height_label = explaining({}, part);
  m_height = makeLength(tr("From corner 2 to corner 3"), part);
  grid->addWidget(m_width_label, 0, 0);
  grid->addWidget(m_height_label, 0, 1);
  grid->addWidget(m_width, 1, 0);
  grid->addWidget(m_height, 1, 1);
  column->addLayout(grid);
  for (QLineEdit* line : {m_width, m_height}) {
    connect(line, &QLineEdit::textEdited, this, &PicturePage::readSides);
  }
  m_sample = new QCheckBox(tr("Show how it will look"), part);
  column->addWidget(m_sample);
  connect(m_sample, &QCheckBox::toggled, this, [this](bool on) { m_desk.setSampling(on); });
  column->addSpacing(4);
  m_apply[1] = new QPushButton(tr("Straighten  (Enter)"), part);
  column->addLayout(makeEnds(m_apply[1], m_give_up[1], part));
  m_as_photo = new QPushButton(tr("Take the photo as it is"), part);
  connect(m_as_photo, &QPushButton::clicked, this, [this] {
    m_desk.applyUnstraighten();
    takeFocus();
  });
  column->addWidget(m_as_photo);
  column->addStretch();
  return part;
}

}  // namespace sumpwright::stages
