#include "window/KeysDialog.h"

#include <QCoreApplication>
#include <QHeaderView>
#include <QKeySequence>
#include <QTableWidget>
#include <QTimer>
#include <QVBoxLayout>

#include "paint/Look.h"
#include "window/Actions.h"

namespace sumpwright::window {

namespace {

QString nativeKeys(const ActionSpec& spec) {
  QStringList keys;
  for (const QString& key :
       QString::fromLatin1(spec.keys).split(QStringLiteral("; "), Qt::SkipEmptyParts)) {
    keys << QKeySequence(key, QKeySequence::PortableText).toString(QKeySequence::NativeText);
  }
  return keys.join(QStringLiteral("   "));
}

}  // namespace

KeysDialog::KeysDialog(QWidget* parent) : QDialog(parent) {
  setWindowTitle(tr("Keys"));
  const double k = paint::uiScale(font());
  resize(qRound(860 * k), qRound(600 * k));
  auto* table = new QTableWidget(static_cast<int>(actionTable().size()), 3, this);
  table->setHorizontalHeaderLabels({tr("Action"), tr("Keys"), tr("What it does")});
  table->setAccessibleName(tr("Actions and their keys"));
  table->setEditTriggers(QAbstractItemView::NoEditTriggers);
  table->setSelectionBehavior(QAbstractItemView::SelectRows);
  table->setShowGrid(false);
  table->setWordWrap(true);
  table->verticalHeader()->hide();
  table->horizontalHeader()->setDefaultAlignment(Qt::AlignLeft);
  int row = 0;
  for (const ActionSpec& spec : actionTable()) {
    const QString name = QCoreApplication::translate("Actions", spec.text).remove(QLatin1Char('&'));
    table->setItem(row, 0, new QTableWidgetItem(name));
    table->setItem(row, 1, new QTableWidgetItem(nativeKeys(spec)));
    table->setItem(row, 2, new QTableWidgetItem(QCoreApplication::translate("Actions", spec.tip)));
    ++row;
  }
  table->setColumnWidth(0, qRound(200 * k));
  table->setColumnWidth(1, qRound(210 * k));
  table->horizontalHeader()->setStretchLastSection(true);
  auto* column = new QVBoxLayout(this);
  column->addWidget(table);
  // Once the last column has its width: before, every line would be measured as if it wrapped.
  QTimer::singleShot(0, table, &QTableWidget::resizeRowsToContents);
}

}  // namespace sumpwright::window
