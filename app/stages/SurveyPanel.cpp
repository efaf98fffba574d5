#include "stages/SurveyPanel.h"

#include <QScrollArea>
#include <QVBoxLayout>

#include "paint/Look.h"
#include "stages/Leading.h"

namespace sumpwright::stages {

namespace {

/// A page that scrolls where the window is too low for it, rather than have its parts overlap.
QWidget* scrolling(QWidget* page, QWidget* parent) {
  auto* scroll = new QScrollArea(parent);
  scroll->setWidgetResizable(true);
  scroll->setFrameShape(QFrame::NoFrame);
  scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  scroll->setFocusPolicy(Qt::NoFocus);
  scroll->setWidget(page);
  return scroll;
}

}  // namespace

SurveyPanel::SurveyPanel(session::Session& session, session::TapeDesk& desk,
                         session::PictureDesk& picture, QWidget* parent)
    : QWidget(parent), m_session(session), m_picture_desk(picture) {
  setProperty("surface", QStringLiteral("panel"));
  setAttribute(Qt::WA_StyledBackground);
  setAccessibleName(tr("Survey"));
  auto* column = new QVBoxLayout(this);
  const int margin = qRound(20 * paint::uiScale(font()));
  column->setContentsMargins(margin, qRound(0.6 * margin), margin, qRound(0.6 * margin));
  column->setSpacing(10);
  m_choice = new Segments(tr("Part of the survey"),
                          {tr("House"), tr("Outline"), tr("Things"), tr("Looked for"), tr("Check")},
                          this, Segments::Spacing::close);
  column->addWidget(m_choice);
  m_book_gone = new SideNote(SideNote::Kind::warning, this);
  m_book_gone->setText(
      tr("The field book of this outline is dropped: its corners no longer stand where they were "
         "taped. Undo brings it back."));
  m_book_gone->setCure(tr("Undo"));
  m_book_gone->setDismissable();
  m_book_gone->hide();
  column->addWidget(m_book_gone);
  m_found = new SideNote(SideNote::Kind::warning, this);
  m_found->setCure(tr("Looked for"));
  m_found->setDismissable();
  m_found->hide();
  column->addWidget(m_found);
  m_pages = new QStackedWidget(this);
  m_house = new HousePage(session, m_pages);
  m_outline = new OutlinePage(session, desk, m_pages);
  m_things = new ThingsPage(session, m_pages);
  m_looked = new LookedPage(session, m_pages);
  m_check = new CheckPage(session, m_pages);
  m_picture = new PicturePage(session, picture, m_pages);
  m_import = new ImportPage(session, m_pages);
  for (QWidget* page : std::initializer_list<QWidget*>{m_house, m_outline, m_things, m_looked,
                                                       m_check, m_picture, m_import}) {
    // The others scroll by themselves.
    const bool whole = page == m_outline || page == m_things || page == m_picture;
    m_pages->addWidget(whole ? scrolling(page, m_pages) : page);
  }
  column->addWidget(m_pages, 1);
  showPage(SurveyPage::outline);
  connect(m_choice, &Segments::picked, this,
          [this](int index) { showPage(static_cast<SurveyPage>(index)); });
  connect(m_check, &CheckPage::led, this, &SurveyPanel::leadTo);
  connect(m_outline, &OutlinePage::outlineClosed, this, [this] { showPage(SurveyPage::things); });
  connect(m_looked, &LookedPage::foundAfterAll, this, [this](const QString& kind) {
    m_found->setText(tr("%1: “None” was said under Looked for; now one is drawn, and it reads "
                        "“There”. Are there more? Look, and draw them.")
                         .arg(kind));
    m_found->setVisible(!kind.isEmpty());
  });
  connect(m_found, &SideNote::curePressed, this, [this] {
    m_found->hide();
    showPage(SurveyPage::looked);
  });
  connect(m_book_gone, &SideNote::curePressed, this, [this] { m_session.undoStack().undo(); });
  connect(&session, &session::Session::studyChanged, this, &SurveyPanel::watchBooks);
  connectPicture();
  connect(&session, &session::Session::jobChanged, this, [this] {
    m_books.clear();
    m_book_gone->hide();
    m_begun = m_session.hasJob() && !m_session.job().plan.rings.empty() &&
              m_session.job().plan.rings.front().closed;
    m_found->hide();
    const bool begun = m_session.hasJob() && m_session.study() != nullptr;
    showPage(begun ? SurveyPage::things : SurveyPage::outline);
  });
}

void SurveyPanel::connectPicture() {
  connect(m_outline, &OutlinePage::pictureAsked, this, [this] { showPage(SurveyPage::picture); });
  connect(m_picture, &PicturePage::traceAsked, this, [this] { showPage(SurveyPage::outline); });
  connect(m_import, &ImportPage::givenUp, this, [this] { showPage(SurveyPage::outline); });
  connect(m_import, &ImportPage::taken, this, [this] { showPage(SurveyPage::things); });
  // Also while another stage is on show, the picture is not at work.
  connect(&m_picture_desk, &session::PictureDesk::changed, this, [this] {
    const bool shown = m_picture_desk.picture() != nullptr;
    m_check->setMore(shown ? base::Problems() : m_picture_desk.problems());
  });
}

void SurveyPanel::showPage(SurveyPage page) {
  const bool of_outline = page == SurveyPage::picture || page == SurveyPage::import;
  m_choice->show(static_cast<int>(of_outline ? SurveyPage::outline : page));
  m_pages->setCurrentIndex(static_cast<int>(page));
  Q_EMIT pageShown();
  if (isVisible()) takeFocus();
}

/// What was measured does not go without a word: a corner or wall that is dragged takes the book of
/// its outline along.
void SurveyPanel::watchBooks() {
  if (!m_session.hasJob() || m_session.isPreviewing()) return;
  const auto& rings = m_session.job().plan.rings;
  std::vector<bool> books;
  bool gone = false;
  bool back = false;
  for (std::size_t r = 0; r < rings.size(); ++r) {
    books.push_back(!rings[r].taped.empty());
    if (r >= m_books.size()) continue;
    gone = gone || (m_books[r] && !books[r] && rings[r].closed);
    back = back || (!m_books[r] && books[r]);
  }
  if (gone || back) m_book_gone->setVisible(gone);
  m_books = std::move(books);
  // A house begun with the pointer has no book to go on with: things come next.
  const bool begun = !rings.empty() && rings.front().closed;
  if (begun && !m_begun && !m_books.front() && page() == SurveyPage::outline) {
    m_choice->show(static_cast<int>(SurveyPage::things));
    m_pages->setCurrentIndex(static_cast<int>(SurveyPage::things));  // the plan keeps the keys
  }
  m_begun = begun;
}

void SurveyPanel::takeFocus() {
  switch (page()) {
    case SurveyPage::house:
      return m_house->takeFocus();
    case SurveyPage::outline:
      return m_outline->takeFocus();
    case SurveyPage::things:
      return m_things->takeFocus();
    case SurveyPage::looked:
      return m_looked->takeFocus();
    case SurveyPage::check:
      return m_check->takeFocus();
    case SurveyPage::picture:
      return m_picture->takeFocus();
    case SurveyPage::import:
      return m_import->takeFocus();
  }
}

void SurveyPanel::leadTo(const base::Problem& problem) {
  if (!m_session.hasJob()) return;
  const std::string& at = problem.pointer;
  const std::string thing = thingAnswering(m_session.job(), problem);
  if (!thing.empty()) {
    m_session.select(thing);
    m_session.show(thing);
    if (!m_things->asks(thing)) return;  // a sump or a waiver: it is shown on the plan
    showPage(SurveyPage::things);
    m_things->takeFocusAt(at + "/" + factAnswering(problem));
  } else if (at.starts_with("/looked_for")) {
    showPage(SurveyPage::looked);
    m_looked->takeFocusAt(at);
  } else if (at.starts_with("/plan/underlay")) {
    showPage(SurveyPage::picture);
  } else if (at.starts_with("/plan/rings")) {
    showPage(SurveyPage::outline);
  } else if (at.starts_with("/plan") && at != "/plan/north_deg") {
    showPage(SurveyPage::things);
  } else {
    showPage(SurveyPage::house);
    m_house->takeFocusAt(at);
  }
}

}  // namespace sumpwright::stages
