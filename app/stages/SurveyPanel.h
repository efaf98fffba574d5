#pragma once
// The survey beside the plan: the house, the outline as it is taped, the things on it, what was
// looked for, and what is still wrong or missing.

#include <QStackedWidget>
#include <QWidget>
#include <vector>

#include "session/PictureDesk.h"
#include "session/Session.h"
#include "session/TapeDesk.h"
#include "stages/CheckPage.h"
#include "stages/HousePage.h"
#include "stages/ImportPage.h"
#include "stages/LookedPage.h"
#include "stages/OutlinePage.h"
#include "stages/PicturePage.h"
#include "stages/Segments.h"
#include "stages/SideNote.h"
#include "stages/ThingsPage.h"

namespace sumpwright::stages {

/// The last two belong to the outline and are reached from it.
enum class SurveyPage { house, outline, things, looked, check, picture, import };

class SurveyPanel final : public QWidget {
  Q_OBJECT

 public:
  SurveyPanel(session::Session& session, session::TapeDesk& desk, session::PictureDesk& picture,
              QWidget* parent = nullptr);
  HousePage* house() const { return m_house; }
  OutlinePage* outline() const { return m_outline; }
  ThingsPage* things() const { return m_things; }
  LookedPage* looked() const { return m_looked; }
  CheckPage* check() const { return m_check; }
  PicturePage* picture() const { return m_picture; }
  ImportPage* import() const { return m_import; }
  Segments* pages() const { return m_choice; }
  /// Shown when an edit has dropped a field book.
  SideNote* bookGone() const { return m_book_gone; }
  /// Shown when one of a kind is drawn that was said not to be there.
  SideNote* foundAfterAll() const { return m_found; }
  SurveyPage page() const { return static_cast<SurveyPage>(m_pages->currentIndex()); }
  void showPage(SurveyPage page);
  /// Puts the cursor where typing goes on.
  void takeFocus();
  /// Opens the page and field that answer a problem of the plan check.
  void leadTo(const base::Problem& problem);

 Q_SIGNALS:
  void pageShown();

 private:
  void watchBooks();
  void connectPicture();

  session::Session& m_session;
  session::PictureDesk& m_picture_desk;
  Segments* m_choice;
  QStackedWidget* m_pages;
  HousePage* m_house;
  OutlinePage* m_outline;
  ThingsPage* m_things;
  LookedPage* m_looked;
  CheckPage* m_check;
  SideNote* m_book_gone;
  SideNote* m_found;
  std::vector<bool> m_books;  ///< of each ring, whether it has one
  PicturePage* m_picture;
  ImportPage* m_import;
  bool m_begun = false;  ///< the house is closed
};

}  // namespace sumpwright::stages
