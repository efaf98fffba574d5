#pragma once
// The papers of the job: the client's marked-up plan as it will be printed, its size, and the ways
// out (PDF, SVG, PNG, printer).

#include <QAction>
#include <QDateTime>
#include <QLabel>
#include <QWidget>
#include <optional>

#include "dossier/ClientPlan.h"
#include "session/Session.h"
#include "session/SuctionDesk.h"
#include "stages/PaperPreview.h"
#include "stages/Segments.h"
#include "stages/SideNote.h"

namespace sumpwright::stages {

struct PaperActions {
  QAction* pdf = nullptr;
  QAction* svg = nullptr;
  QAction* png = nullptr;
  QAction* print = nullptr;
  QAction* previous_page = nullptr;
  QAction* next_page = nullptr;
};

class PaperStage final : public QWidget {
  Q_OBJECT

 public:
  PaperStage(session::Session& session, session::SuctionDesk& suction, const PaperActions& actions,
             QWidget* parent = nullptr);

  /// The paper for the job as it stands, made when first asked for after a change; nothing without
  /// a study.
  const dossier::Document* document();
  dossier::PaperSize size() const { return m_size; }
  void turnPage(int by);
  int page() const { return m_page; }
  void tell(const QString& text);
  QString told() const { return m_note->isHidden() ? QString() : m_note->text(); }
  Segments* sizes() const { return m_sizes; }

 protected:
  void showEvent(QShowEvent* event) override;
  void changeEvent(QEvent* event) override;

 private:
  QWidget* makeSide(const PaperActions& actions);
  void outdate();
  void takeOutlook();
  void refresh();

  session::Session& m_session;
  session::SuctionDesk& m_suction;
  std::shared_ptr<const dossier::Outlook> m_outlook;  ///< nothing: not worked out yet
  PaperActions m_actions;
  dossier::PaperSize m_size = dossier::PaperSize::a4;
  std::optional<dossier::Document> m_document;
  int m_page = 0;
  PaperPreview* m_preview;
  QLabel* m_state = nullptr;
  QLabel* m_pages = nullptr;
  SideNote* m_warning = nullptr;
  SideNote* m_note = nullptr;
  Segments* m_sizes = nullptr;
};

}  // namespace sumpwright::stages
