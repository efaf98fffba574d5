#pragma once
// The papers of the job as they will be printed: which of them, on what sheet, under whose head,
// and the ways out (PDF, SVG, PNG, CSV, printer). All of them are what compose() made.

#include <QAction>
#include <QLabel>
#include <QScrollArea>
#include <QSettings>
#include <QStackedWidget>
#include <QWidget>
#include <optional>
#include <vector>

#include "dossier/Papers.h"
#include "session/FirmDesk.h"
#include "session/QuoteDesk.h"
#include "session/Session.h"
#include "session/SuctionDesk.h"
#include "stages/FirmPage.h"
#include "stages/PaperList.h"
#include "stages/PaperPreview.h"
#include "stages/QuotePage.h"
#include "stages/QuoteTable.h"
#include "stages/Segments.h"
#include "stages/SideNote.h"

namespace sumpwright::stages {

struct PaperActions {
  QAction* pdf = nullptr;
  QAction* svg = nullptr;
  QAction* png = nullptr;
  QAction* csv = nullptr;
  QAction* print = nullptr;
  QAction* previous_page = nullptr;
  QAction* next_page = nullptr;
};

struct PaperDesks {
  session::Session& session;
  session::SuctionDesk& suction;
  session::QuoteDesk& quote;
  session::FirmDesk& firm;
};

/// One paper of those that are ticked.
struct MadePaper {
  dossier::Paper paper;
  dossier::Document document;
};

enum class PaperPage { papers, quote, firm };

class PaperStage final : public QWidget {
  Q_OBJECT

 public:
  /// `settings` and the desks must outlive it.
  PaperStage(const PaperDesks& desks, QSettings& settings, const PaperActions& actions,
             QWidget* parent = nullptr);

  /// The ticked papers bound in one, for the job as it stands, made when first asked for after a
  /// change; nullptr without a study, or with none ticked.
  const dossier::Document* document();
  /// The same papers one by one, in the order they are handed over.
  const std::vector<MadePaper>& papers();
  const PaperChoice& choice() const { return m_list->choice(); }
  bool hasPaper() const { return !choice().papers.empty(); }
  /// Whether one of them tells of the suction, which is worth waiting for.
  bool tellsSuction() const;
  void turnPage(int by);
  int page() const { return m_page; }
  int pageCount();
  void tell(const QString& text);
  QString told() const { return m_note->isHidden() ? QString() : m_note->text(); }
  QString warned() const { return m_warning->isHidden() ? QString() : m_warning->text(); }
  /// Takes what is being typed.
  void settle();

  Segments* pages() const { return m_choice; }
  void showPage(PaperPage page);
  bool showsQuote() const { return m_left->currentIndex() == 1; }
  PaperList* list() const { return m_list; }
  FirmPage* firm() const { return m_firm; }
  QuotePage* quote() const { return m_quote_page; }
  QuoteTable* quoteTable() const { return m_quote_table; }
  QLabel* pageLabel() const { return m_pages; }

 Q_SIGNALS:
  void choiceChanged();

 protected:
  void showEvent(QShowEvent* event) override;
  void changeEvent(QEvent* event) override;

 private:
  QWidget* makeSide();
  QWidget* makePapersPage(QWidget* parent);
  QWidget* makeFirmPage(QWidget* parent);
  QWidget* makeQuotePage(QWidget* parent);
  QWidget* makePageRow(QWidget* parent);
  QWidget* makeWaysOut(QWidget* parent);
  void compose();
  void outdate();
  void takeOutlook();
  void refresh();
  void refreshWords();
  QString pricesWarning();

  session::Session& m_session;
  session::SuctionDesk& m_suction;
  session::QuoteDesk& m_quote;
  session::FirmDesk& m_firm_desk;
  QSettings& m_settings;
  PaperActions m_actions;
  std::shared_ptr<const dossier::Outlook> m_outlook;  ///< nothing: not worked out yet
  std::optional<dossier::Document> m_document;
  std::vector<MadePaper> m_made;
  int m_page = 0;
  PaperPreview* m_preview;
  QStackedWidget* m_left = nullptr;  ///< the preview, or the lines of the quote
  QuoteTable* m_quote_table = nullptr;
  QuotePage* m_quote_page = nullptr;
  QWidget* m_page_row = nullptr;
  QWidget* m_ways_out = nullptr;
  Segments* m_choice = nullptr;
  QStackedWidget* m_stack = nullptr;
  PaperList* m_list = nullptr;
  FirmPage* m_firm = nullptr;
  QLabel* m_state = nullptr;
  QLabel* m_pages = nullptr;
  SideNote* m_warning = nullptr;
  SideNote* m_note = nullptr;
};

}  // namespace sumpwright::stages
