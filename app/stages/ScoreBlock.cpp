#include "stages/ScoreBlock.h"

#include <QPainter>
#include <algorithm>
#include <cmath>

#include "paint/Look.h"

namespace sumpwright::stages {

namespace {

constexpr int kInARow = 3;          // more parts than that: their words would run into each other
constexpr double kPartRow_px = 24;  // of parts

QString lowered(const std::string& title) {
  QString text = QString::fromStdString(title);
  if (!text.isEmpty()) text[0] = text[0].toLower();
  return text;
}

}  // namespace

ScoreBlock::ScoreBlock(QWidget* parent) : QWidget(parent) {
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  setAccessibleName(tr("Score"));
}

QSize ScoreBlock::sizeHint() const {
  const double k = paint::uiScale(font());
  return {qRound(200 * k), qRound((72 + kPartRow_px * (rows() - 1)) * k)};
}

int ScoreBlock::rows() const {
  if (!m_score) return 1;
  const auto judged = std::count_if(m_score->parts.begin(), m_score->parts.end(),
                                    [](const siting::ScoredPart& part) { return part.judged; });
  return std::max(1, (static_cast<int>(judged) + kInARow - 1) / kInARow);
}

void ScoreBlock::show(const std::optional<siting::Score>& score, bool would_be, bool best) {
  const int before = rows();
  m_score = score;
  if (rows() != before) updateGeometry();
  m_would_be = would_be;
  m_best = best;
  if (score) {
    setAccessibleDescription(tr("%1 %2").arg(std::lround(score->total)).arg(note()));
    QStringList lines;
    for (const siting::ScoredPart& part : score->parts) {
      if (!part.judged) continue;
      lines << tr("%1: %2 of %3")
                   .arg(QString::fromStdString(part.title))
                   .arg(std::lround(part.points))
                   .arg(std::lround(part.weight));
    }
    if (score->advisory_cost > 0) lines << tr("advice against it: −%1").arg(score->advisory_cost);
    if (!leftOut().isEmpty()) lines << leftOut();
    setToolTip(lines.join(QLatin1Char('\n')));
  }
  update();
}

QString ScoreBlock::note() const {
  if (m_would_be) return tr("if it were allowed");
  if (m_best) return tr("of 100, best on this house");
  return tr("of 100");
}

QString ScoreBlock::leftOut() const {
  QStringList names;
  for (const siting::ScoredPart& part : m_score->parts) {
    if (!part.judged) names << lowered(part.title);
  }
  return names.isEmpty() ? QString()
                         : tr("Not judged yet, left out: %1").arg(names.join(QStringLiteral(", ")));
}

void ScoreBlock::paintEvent(QPaintEvent*) {
  const double k = paint::uiScale(font());
  const drawing::Theme& t = paint::look(palette());
  QPainter p(this);
  p.setRenderHint(QPainter::Antialiasing);
  const QFont label = paint::sized(font(), 0.98, true);
  const QFont small = paint::sized(font(), 0.87);
  const double line = 20 * k;
  p.fillRect(QRectF(0, 0, width(), 1), paint::colour(t.hairline));
  p.translate(0, 5 * k);
  p.setFont(label);
  p.setPen(paint::colour(t.ink));
  p.drawText(QRectF(0, 0, width(), line), Qt::AlignLeft | Qt::AlignVCenter, tr("Score"));
  if (!m_score) return;

  const QColor figure = paint::colour(m_would_be ? t.stale_text : t.ink);
  p.setFont(paint::sized(font(), 1.6, true));
  p.setPen(figure);
  p.drawText(QRectF(50 * k, 0, 70 * k, line), Qt::AlignLeft | Qt::AlignVCenter,
             QString::number(std::lround(m_score->total)));
  p.setFont(paint::sized(font(), 0.9, false, m_would_be));
  p.setPen(paint::colour(m_would_be ? t.stale_text : t.ink2));
  p.drawText(QRectF(0, 0, width(), line), Qt::AlignRight | Qt::AlignVCenter, note());

  std::vector<const siting::ScoredPart*> judged;
  for (const siting::ScoredPart& part : m_score->parts) {
    if (part.judged) judged.push_back(&part);
  }
  const double gap = 16 * k;
  const double column = (width() - gap * (kInARow - 1)) / kInARow;
  p.setFont(small);
  for (std::size_t i = 0; i < judged.size(); ++i) {
    const siting::ScoredPart& part = *judged[i];
    const double x = static_cast<double>(i % kInARow) * (column + gap);
    const double down = static_cast<double>(i / kInARow) * kPartRow_px * k;
    const QRectF text(x, down + 23 * k, column, 16 * k);
    p.setPen(paint::colour(t.ink2));
    p.drawText(text, Qt::AlignLeft | Qt::AlignVCenter, QString::fromStdString(part.title));
    p.setPen(paint::colour(t.ink));
    p.drawText(text, Qt::AlignRight | Qt::AlignVCenter,
               QStringLiteral("%1/%2").arg(std::lround(part.points)).arg(std::lround(part.weight)));
    const QRectF bar(x, down + 41 * k, column, 4 * k);
    p.setPen(Qt::NoPen);
    p.setBrush(paint::colour(t.hairline));
    p.drawRect(bar);
    p.setBrush(paint::colour(m_would_be ? t.stale_line : t.wall));
    const double share = part.weight > 0 ? std::clamp(part.points / part.weight, 0.0, 1.0) : 0.0;
    p.drawRect(QRectF(bar.x(), bar.y(), bar.width() * share, bar.height()));
  }
  p.setFont(small);
  p.setPen(paint::colour(t.ink2));
  QString rest = leftOut();
  if (m_score->advisory_cost > 0) {
    const QString cost = tr("Advice against it: −%1").arg(m_score->advisory_cost);
    rest = rest.isEmpty() ? cost : cost + QStringLiteral(" · ") + rest;
  }
  const double low = (49 + kPartRow_px * (rows() - 1)) * k;
  p.drawText(QRectF(0, low, width(), 17 * k), Qt::AlignLeft | Qt::AlignVCenter,
             QFontMetrics(small).elidedText(rest, Qt::ElideRight, width()));
}

}  // namespace sumpwright::stages
