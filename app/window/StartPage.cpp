#include "window/StartPage.h"

#include <QCoreApplication>
#include <QDir>
#include <QFileInfo>
#include <QPainter>
#include <QPushButton>
#include <QScrollArea>
#include <QStandardPaths>

#include "files/JobFile.h"
#include "paint/Look.h"
#include "stages/ActionButton.h"

namespace sumpwright::window {

namespace {

constexpr int kRingRoom_px = 5;  // round what has the keys

}  // namespace

StartPage::StartPage(QAction* fresh, QAction* open, QWidget* parent)
    : QWidget(parent), m_lists(new QVBoxLayout) {
  const double k = paint::uiScale(font());
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(qRound(48 * k), qRound(48 * k), qRound(48 * k), qRound(24 * k));
  column->setSpacing(qRound(12 * k));
  auto* title = new QLabel(tr("No job is open"), this);
  title->setFont(paint::sized(font(), 1.9, true));
  auto* sentence = new QLabel(tr("Begin a new job, open a job file, or drop one here. A job is one "
                                 "house: its plan, and where its sump goes."),
                              this);
  sentence->setWordWrap(true);
  sentence->setFont(paint::sized(font(), 1.25));
  auto* buttons = new QHBoxLayout;
  buttons->setSpacing(qRound(8 * k));
  for (QAction* action : {fresh, open}) {
    using Role = stages::ActionButton::Role;
    auto* button = new stages::ActionButton(action == fresh ? Role::primary : Role::plain, this);
    button->bind(action);
    buttons->addWidget(button);
  }
  buttons->addStretch();
  column->addWidget(title);
  column->addWidget(sentence);
  column->addSpacing(qRound(4 * k));
  column->addLayout(buttons);
  column->addSpacing(qRound(12 * k));
  // In a low window the lists scroll; squeezed together their lines would be cut.
  m_lists->setSpacing(qRound(2 * k));
  m_lists->setContentsMargins(0, 0, 0, 0);
  auto* scroll = new QScrollArea(this);
  scroll->setWidgetResizable(true);
  scroll->setFrameShape(QFrame::NoFrame);
  scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  scroll->setFocusPolicy(Qt::NoFocus);
  auto* all = new QWidget(scroll);
  auto* rows = new QVBoxLayout(all);
  rows->setContentsMargins(kRingRoom_px, 0, kRingRoom_px, 0);
  rows->addLayout(m_lists);
  rows->addStretch();
  scroll->setWidget(all);
  all->setAutoFillBackground(false);  // the faint outline of a drawing shows through
  scroll->viewport()->setAutoFillBackground(false);
  column->addWidget(scroll, 1);
  m_all = all;
}

void StartPage::show(const QStringList& recent, const QStringList& samples,
                     const std::vector<session::LeftOver>& kept) {
  while (QLayoutItem* item = m_lists->takeAt(0)) {
    if (QWidget* row = item->widget()) {
      row->hide();
      row->deleteLater();  // it may be the one whose button was pressed
    }
    delete item;
  }
  if (!kept.empty()) addHeading(tr("Kept from when Sumpwright ended early"));
  for (const session::LeftOver& left : kept) addKept(left);
  addList(tr("Recent jobs"), recent, true);
  addList(tr("Invented samples"), samples, false);
}

void StartPage::addHeading(const QString& title) {
  auto* heading = new QLabel(title, m_all);
  heading->setFont(paint::sized(font(), 0.98, true));
  m_lists->addSpacing(8);
  m_lists->addWidget(heading);
}

void StartPage::addKept(const session::LeftOver& left) {
  const QString name = left.address.isEmpty() ? tr("No address") : left.address;
  const QString at = timeText(left.written_at);
  const QString file =
      left.origin.isEmpty() ? tr("never saved") : QFileInfo(left.origin).fileName();
  const QString words = left.problems.empty() ? tr("%1   %2, work up to %3").arg(name, file, at)
                                              : tr("Cannot be read   kept %1").arg(at);
  auto* row = new QWidget(m_all);
  auto* across = new QHBoxLayout(row);
  across->setContentsMargins(0, 0, 0, 0);
  auto* open = new QPushButton(words, row);
  open->setProperty("role", QStringLiteral("quiet"));
  open->setToolTip(tr("Goes on with this work. It stays kept until you save it or close it."));
  open->setEnabled(left.problems.empty());
  auto* discard = new QPushButton(tr("Discard"), row);
  discard->setProperty("role", QStringLiteral("quiet"));
  discard->setToolTip(tr("Removes this work for good, asking first."));
  discard->setAccessibleName(tr("Discard the kept work on %1").arg(name));
  across->addWidget(open);
  across->addWidget(discard);
  across->addStretch();
  m_lists->addWidget(row);
  connect(open, &QPushButton::clicked, this, [this, left] { Q_EMIT keptPicked(left); });
  connect(discard, &QPushButton::clicked, this, [this, left] { Q_EMIT keptDiscarded(left); });
}

void StartPage::addList(const QString& title, const QStringList& paths, bool with_folder) {
  if (paths.isEmpty()) return;
  addHeading(title);
  for (const QString& path : paths) {
    const QFileInfo file(path);
    QString name = file.fileName();
    name.remove(QLatin1String(files::kJobSuffix));
    if (with_folder) name += QStringLiteral("   ") + QDir::toNativeSeparators(file.absolutePath());
    auto* button = new QPushButton(name, m_all);
    button->setProperty("role", QStringLiteral("quiet"));
    button->setToolTip(path);
    m_lists->addWidget(button, 0, Qt::AlignLeft);
    connect(button, &QPushButton::clicked, this, [this, path] { Q_EMIT picked(path); });
  }
}

/// The drawing that will be here, as its own faint outline.
void StartPage::paintEvent(QPaintEvent*) {
  const drawing::Theme& t = paint::look(palette());
  QPainter p(this);
  p.setRenderHint(QPainter::Antialiasing);
  p.fillRect(rect(), paint::colour(t.paper));
  const double unit = std::min(width() * 0.42, height() * 0.8) / 12.0;
  p.translate(width() - 12.5 * unit, height() / 2.0 - 5.0 * unit);
  p.scale(unit, unit);
  const QPolygonF house({{0, 3}, {6.6, 3}, {6.6, 0}, {11, 0}, {11, 10}, {0, 10}});
  p.setPen(QPen(paint::colour(t.hairline), 0.35, Qt::SolidLine, Qt::SquareCap, Qt::MiterJoin));
  p.drawPolygon(house);
  p.setPen(QPen(paint::colour(t.hairline), 0.1, Qt::DashLine));
  p.drawLine(QPointF(4, 3), QPointF(4, 10));
  p.drawLine(QPointF(6.6, 3), QPointF(6.6, 10));
  p.drawLine(QPointF(6.6, 6), QPointF(11, 6));
  p.setPen(QPen(paint::colour(t.hairline), 0.12, Qt::DashLine));
  p.drawEllipse(QPointF(6.6, 1.4), 0.7, 0.7);
}

QString timeText(const QDateTime& at) {
  const bool today = at.date() == QDate::currentDate();
  return at.toString(today ? QStringLiteral("HH:mm") : QStringLiteral("yyyy-MM-dd HH:mm"));
}

QStringList installedSamples() {
  QStringList folders = QStandardPaths::locateAll(QStandardPaths::GenericDataLocation,
                                                  QStringLiteral("sumpwright/samples"),
                                                  QStandardPaths::LocateDirectory);
  folders << QDir(QCoreApplication::applicationDirPath())
                 .filePath(QStringLiteral("../share/sumpwright/samples"));
  for (const QString& folder : folders) {
    QStringList paths;
    const QDir dir(folder);
    for (const QString& name :
         dir.entryList({QStringLiteral("*.sump.json")}, QDir::Files, QDir::Name)) {
      paths << dir.absoluteFilePath(name);
    }
    if (!paths.isEmpty()) return paths;
  }
  return {};
}

}  // namespace sumpwright::window
