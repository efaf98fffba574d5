#include "tape/Legend.h"

#include <QPainter>

#include "paint/Icons.h"
#include "paint/Look.h"
#include "words/Words.h"

namespace sumpwright::tape {

using rules::State;

namespace {

constexpr double kSample_px = 34.0;
constexpr double kBetween_px = 20.0;
constexpr double kAfterSample_px = 14.0;  // the band's end mark stands out a little

}  // namespace

Legend::Legend(session::Session& session, QWidget* parent) : QWidget(parent), m_session(session) {
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  connect(&session, &session::Session::studyChanged, this, &Legend::refresh);
  refresh();
}

void Legend::refresh() {
  m_entries.clear();
  if (const siting::Study* study = m_session.study()) {
    const std::vector<double> lengths = study->lengths_m();
    const auto units = study->job().display_units == plan::DisplayUnits::imperial
                           ? words::Units::imperial
                           : words::Units::metric;
    const std::pair<State, QString> names[] = {{State::clear, tr("Clear")},
                                               {State::advised_against, tr("Advised against")},
                                               {State::not_proven, tr("Not proven")},
                                               {State::refused, tr("Refused")}};
    words::QuantityStyle style;
    style.decimals = 1;
    for (const auto& [state, name] : names) {
      const double metres = lengths[static_cast<std::size_t>(state)];
      const std::string total = words::print({metres, base::Unit::metre}, units, style);
      m_entries.push_back(
          {state, name + QLatin1Char(' ') + QString::fromStdString(total), metres > 0.0});
    }
  }
  QStringList texts;
  for (const Entry& e : m_entries) texts << e.text;
  setAccessibleName(texts.join(QStringLiteral(", ")));
  update();
}

QSize Legend::sizeHint() const {
  const double k = paint::uiScale(font());
  return {qRound(480 * k), qRound(36 * k)};
}

QSize Legend::minimumSizeHint() const {
  const double k = paint::uiScale(font());
  return {qRound(120 * k), qRound(36 * k)};
}

void Legend::paintEvent(QPaintEvent*) {
  const double k = paint::uiScale(font());
  const drawing::ThemeName theme = paint::themeOf(palette());
  const QFont body = paint::sized(font(), 0.96);
  const QFontMetrics metrics(body);
  QPainter p(this);
  p.setRenderHint(QPainter::Antialiasing);
  p.setFont(body);
  const auto widthOf = [&](bool all) {
    double width = 0;
    for (const Entry& e : m_entries) {
      if (!all && !e.present) continue;
      width += (kSample_px + kAfterSample_px + kBetween_px) * k + metrics.horizontalAdvance(e.text);
    }
    return width - kBetween_px * k;
  };
  const bool all = widthOf(true) <= width();
  double x = 0;
  for (const Entry& e : m_entries) {
    if (!all && !e.present) continue;
    paint::paintBand(p, e.state, {x, height() / 2.0 - 5 * k, kSample_px * k, 10 * k}, k, theme);
    x += (kSample_px + kAfterSample_px) * k;
    p.setPen(paint::colour(drawing::theme(theme).ink));
    p.drawText(QRectF(x, 0, width() - x, height()), Qt::AlignVCenter | Qt::AlignLeft, e.text);
    x += metrics.horizontalAdvance(e.text) + kBetween_px * k;
  }
}

}  // namespace sumpwright::tape
