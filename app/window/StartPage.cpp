#include "window/StartPage.h"

#include <QCoreApplication>
#include <QDir>
#include <QFileInfo>
#include <QPainter>
#include <QPushButton>
#include <QStandardPaths>

#include "files/JobFile.h"
#include "paint/Look.h"
#include "stages/ActionButton.h"

namespace sumpwright::window {

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
  m_lists->setSpacing(qRound(2 * k));
  column->addLayout(m_lists);
  column->addStretch();
}

void StartPage::show(const QStringList& recent, const QStringList& samples) {
  while (QLayoutItem* item = m_lists->takeAt(0)) {
    if (item->widget() != nullptr) item->widget()->deleteLater();
    delete item;
  }
  addList(tr("Recent jobs"), recent, true);
  addList(tr("Invented samples"), samples, false);
}

void StartPage::addList(const QString& title, const QStringList& paths, bool with_folder) {
  if (paths.isEmpty()) return;
  auto* heading = new QLabel(title, this);
  heading->setFont(paint::sized(font(), 0.98, true));
  m_lists->addSpacing(8);
  m_lists->addWidget(heading);
  for (const QString& path : paths) {
    const QFileInfo file(path);
    QString name = file.fileName();
    name.remove(QLatin1String(files::kJobSuffix));
    if (with_folder) name += QStringLiteral("   ") + QDir::toNativeSeparators(file.absolutePath());
    auto* button = new QPushButton(name, this);
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
