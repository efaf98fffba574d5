// MainWindow: papers out of the program, as files and on the printer.

#include <QApplication>
#include <QDir>
#include <QFileInfo>
#include <QPrinter>
#include <QTime>
#include <algorithm>

#include "files/JobFile.h"
#include "paint/Export.h"
#include "paint/Painting.h"
#include "stages/SitingText.h"
#include "window/MainWindow.h"

namespace sumpwright::window {

namespace {

/// Spreadsheets take a file without it for one of their own alphabet.
constexpr const char* kByteOrderMark = "\xEF\xBB\xBF";

/// NAME-quote.pdf beside NAME.pdf.
QString besidePath(const QString& path, dossier::Paper paper) {
  const QFileInfo info(path);
  const std::string_view name = dossier::nameOf(paper);
  return info.dir().filePath(info.completeBaseName() + QLatin1Char('-') +
                             QString::fromUtf8(name.data(), static_cast<qsizetype>(name.size())) +
                             QLatin1Char('.') + info.suffix());
}

QString withEnding(QString path, const QString& ending) {
  if (!path.endsWith(QLatin1Char('.') + ending, Qt::CaseInsensitive))
    path += QLatin1Char('.') + ending;
  return path;
}

QPageLayout layoutOf(const drawing::DrawList& page) {
  const QPageSize size(QSizeF(page.width_mm, page.height_mm), QPageSize::Millimeter, {},
                       QPageSize::FuzzyOrientationMatch);
  const bool lies = page.width_mm > page.height_mm;
  QPageLayout layout(size, lies ? QPageLayout::Landscape : QPageLayout::Portrait, QMarginsF());
  layout.setMode(QPageLayout::FullPageMode);
  return layout;
}

}  // namespace

/// Paper that leaves the program says what to expect: a second or two, if nobody looked yet.
void MainWindow::waitForSuction() {
  if (!m_paper->tellsSuction()) return;
  QApplication::setOverrideCursor(Qt::WaitCursor);
  m_suction.finish();
  QApplication::restoreOverrideCursor();
}

/// The file dialog asks for the name that was typed; the names made of it are asked for here.
bool MainWindow::mayReplace(const QStringList& files) {
  QStringList there;
  for (const QString& file : files) {
    if (QFileInfo::exists(file)) there << QDir::toNativeSeparators(file);
  }
  return there.isEmpty() || m_dialogs.askReplace(this, there);
}

void MainWindow::paperWritten(const QString& kind, const QStringList& files) {
  m_notice->hide();
  m_paper_done =
      tr("%1 saved %2").arg(kind, QTime::currentTime().toString(QStringLiteral("HH:mm")));
  QStringList names;
  for (const QString& file : files) names << QDir::toNativeSeparators(file);
  m_paper->tell(tr("Saved:\n%1").arg(names.join(QLatin1Char('\n'))));
  refreshRail();
}

void MainWindow::exportPaper(const char* format) {
  stages::FactForm::settle();
  m_paper->settle();
  const QString ending = QLatin1String(format);
  const QString suggested = QDir(lastFolder()).filePath(jobName() + QLatin1Char('.') + ending);
  QString path = m_dialogs.saveFile(this, tr("Save the papers"), suggested,
                                    QStringLiteral("%1 (*.%2)").arg(ending.toUpper(), ending));
  if (path.isEmpty()) return;
  path = withEnding(path, ending);
  showStage(Stage::paper);
  waitForSuction();
  QStringList paths;
  std::vector<const dossier::Document*> documents;
  if (m_paper->choice().one_file) {
    paths << path;
    documents.push_back(m_paper->document());
  } else {
    for (const stages::MadePaper& made : m_paper->papers()) {
      paths << besidePath(path, made.paper);
      documents.push_back(&made.document);
    }
    if (!mayReplace(paths)) return;
  }
  QStringList done;
  for (std::size_t i = 0; i < documents.size(); ++i) {
    const auto written = paint::exportPages(paint::pagesOf(*documents[i]),
                                            paths[static_cast<qsizetype>(i)].toStdString());
    if (!written) {
      return tellProblems(
          done.isEmpty() ? tr("The papers are not saved.")
                         : tr("Not all papers are saved: %1 are, the others not.").arg(done.size()),
          written.problems(), tr("Choose another place or name."));
    }
    for (const std::string& file : *written) done << QString::fromStdString(file);
  }
  paperWritten(ending.toUpper(), done);
}

void MainWindow::exportCsv(
    const QString& name, const QString& title,
    const std::function<std::string(const price::PricedQuote&, const price::Say&)>& make) {
  stages::FactForm::settle();
  m_paper->settle();
  const price::PricedQuote* quote = m_quote.quote();
  if (quote == nullptr)
    return tellProblems(tr("There is nothing to save."), m_quote.problems(), {});
  const QString suggested = QDir(lastFolder()).filePath(name + QStringLiteral(".csv"));
  QString path = m_dialogs.saveFile(this, title, suggested, QStringLiteral("CSV (*.csv)"));
  if (path.isEmpty()) return;
  path = withEnding(path, QStringLiteral("csv"));
  showStage(Stage::paper);
  const words::Units units = stages::unitsOf(m_session.job());
  const std::string csv =
      make(*quote, [units](const base::Message& m) { return words::say(m, units); });
  const auto written = files::writeBytes(path.toStdString(), kByteOrderMark + csv);
  if (!written) {
    return tellProblems(tr("The list is not saved."), written.problems(),
                        tr("Choose another place or name."));
  }
  paperWritten(QStringLiteral("CSV"), {path});
}

void MainWindow::exportShopping() {
  exportCsv(tr("%1-shopping").arg(jobName()), tr("Save the shopping list"),
            [](const price::PricedQuote& quote, const price::Say& say) {
              return price::shoppingCsv(price::shoppingOf(quote), say);
            });
}

void MainWindow::exportQuote() {
  exportCsv(tr("%1-quote").arg(jobName()), tr("Save the quote"), price::quoteCsv);
}

void MainWindow::chooseBook() {
  const QString path =
      m_dialogs.openFile(this, tr("Open a price book"), lastFolder(), tr("Price books (*.json)"));
  if (!path.isEmpty()) m_paper->quote()->takeBook(path);
}

void MainWindow::chooseLogo() {
  const QString path = m_dialogs.openFile(this, tr("Choose the firm's logo"), lastFolder(),
                                          tr("Pictures (*.png *.jpg *.jpeg)"));
  if (!path.isEmpty()) m_paper->firm()->takeLogo(path);
}

void MainWindow::printPaper() {
  stages::FactForm::settle();
  m_paper->settle();
  showStage(Stage::paper);
  waitForSuction();
  const dossier::Document& paper = *m_paper->document();
  QPrinter printer(QPrinter::HighResolution);
  printer.setDocName(jobName());  // becomes a file's name where one is printed to
  printer.setPageLayout(layoutOf(paper.pages.front()));
  printer.setFullPage(true);
  if (!m_dialogs.choosePrinter(this, printer)) return;
  const int count = static_cast<int>(paper.pages.size());
  const int first = std::max(printer.fromPage(), 1);  // 0: all of them
  const int last = printer.toPage() > 0 ? std::min(printer.toPage(), count) : count;
  const paint::Pages pages = paint::pagesOf(paper);
  const double dots = printer.resolution() / 25.4;
  QPainter painter;
  for (int page = first; page <= last; ++page) {
    const auto at = static_cast<std::size_t>(page - 1);
    printer.setPageLayout(layoutOf(paper.pages[at]));
    const bool begun = page == first ? painter.begin(&printer) : printer.newPage();
    if (!begun) {
      return tell(
          tr("The printer could not be started.\nNothing more was printed. Look whether it is on "
             "and reachable, or save a PDF and print that."));
    }
    paint::paintDrawList(painter, paper.pages[at], dots);
    paint::paintPictures(painter, pages.pictures, at, dots);
  }
  painter.end();
  m_notice->hide();
  m_paper_done = tr("Printed %1").arg(QTime::currentTime().toString(QStringLiteral("HH:mm")));
  refreshRail();
}

}  // namespace sumpwright::window
