#include "stages/ImportPage.h"

#include <QEvent>
#include <QFileInfo>
#include <QPainter>
#include <QScrollArea>
#include <algorithm>
#include <array>
#include <cmath>

#include "geometry/Shapes.h"
#include "paint/Look.h"
#include "stages/SitingText.h"
#include "stages/SurveyText.h"

namespace sumpwright::stages {

namespace {

struct DrawingUnit {
  const char* name;
  double metres;
};

/// 1 in = 25.4 mm, 1 ft = 12 in, exactly (International Yard and Pound Agreement, 1959).
constexpr std::array kDrawingUnits{
    DrawingUnit{QT_TRANSLATE_NOOP("sumpwright::stages::ImportPage", "a millimetre"), 0.001},
    DrawingUnit{QT_TRANSLATE_NOOP("sumpwright::stages::ImportPage", "a centimetre"), 0.01},
    DrawingUnit{QT_TRANSLATE_NOOP("sumpwright::stages::ImportPage", "a metre"), 1.0},
    DrawingUnit{QT_TRANSLATE_NOOP("sumpwright::stages::ImportPage", "an inch"), 0.0254},
    DrawingUnit{QT_TRANSLATE_NOOP("sumpwright::stages::ImportPage", "a foot"), 0.3048}};

struct Extents {
  geometry::Point low;
  geometry::Point high;
};

Extents extentsOf(const geometry::Polygon& ring) {
  Extents e{ring.front(), ring.front()};
  for (const geometry::Point p : ring) {
    e.low = {std::min(e.low.x, p.x), std::min(e.low.y, p.y)};
    e.high = {std::max(e.high.x, p.x), std::max(e.high.y, p.y)};
  }
  return e;
}

QString printedArea(double m2, const plan::Job& job) {
  words::QuantityStyle style;
  style.decimals = 1;
  return QString::fromStdString(words::print({m2, base::Unit::squareMetre}, unitsOf(job), style));
}

QLabel* secondary(const QString& text, QWidget* parent) {
  auto* label = new QLabel(text, parent);
  label->setWordWrap(true);
  label->setProperty("tone", QStringLiteral("second"));
  return label;
}

}  // namespace

RingPreview::RingPreview(QWidget* parent) : QWidget(parent) {
  setAccessibleName(tr("The rings that were found"));
}

void RingPreview::show(const std::vector<geometry::Polygon>& others, const geometry::Polygon& outer,
                       const std::vector<geometry::Polygon>& courtyards) {
  m_others = others;
  m_outer = outer;
  m_courtyards = courtyards;
  update();
}

QSize RingPreview::sizeHint() const {
  const double k = paint::uiScale(font());
  return {qRound(280 * k), qRound(130 * k)};
}

void RingPreview::paintEvent(QPaintEvent*) {
  const drawing::Theme& t = paint::look(palette());
  const double k = paint::uiScale(font());
  QPainter p(this);
  p.setRenderHint(QPainter::Antialiasing);
  p.setPen(QPen(paint::colour(t.hairline), 1));
  p.setBrush(paint::colour(t.paper));
  p.drawRect(QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5));
  if (m_outer.empty()) return;
  const Extents e = extentsOf(m_outer);
  const double margin = 10 * k;
  const double scale = std::min((width() - 2 * margin) / std::max(1e-3, e.high.x - e.low.x),
                                (height() - 2 * margin) / std::max(1e-3, e.high.y - e.low.y));
  const geometry::Point middle = geometry::lerp(e.low, e.high, 0.5);
  const auto drawn = [&](const geometry::Polygon& ring) {
    QPolygonF shape;
    for (const geometry::Point c : ring) {
      shape << QPointF(0.5 * width() + (c.x - middle.x) * scale,
                       0.5 * height() - (c.y - middle.y) * scale);
    }
    return shape;
  };
  p.setClipRect(rect().adjusted(1, 1, -1, -1));
  p.setBrush(Qt::NoBrush);
  p.setPen(QPen(paint::colour(t.ink3), 1.0 * k));
  for (const geometry::Polygon& ring : m_others) p.drawPolygon(drawn(ring));
  p.setPen(QPen(paint::colour(t.wall), 3.0 * k));
  p.setBrush(paint::colour(t.selection_tint));
  p.drawPolygon(drawn(m_outer));
  p.setPen(QPen(paint::colour(t.wall), 1.6 * k));
  for (const geometry::Polygon& ring : m_courtyards) {
    p.setBrush(paint::colour(t.paper));
    p.drawPolygon(drawn(ring));
    p.setBrush(QBrush(paint::colour(t.ink3), Qt::BDiagPattern));
    p.drawPolygon(drawn(ring));
  }
}

ImportPage::ImportPage(session::Session& session, QWidget* parent)
    : QWidget(parent), m_session(session) {
  setAccessibleName(tr("Outline from a file"));
  auto* whole = new QVBoxLayout(this);
  whole->setContentsMargins(0, 0, 0, 0);
  whole->setSpacing(8);
  auto* title = new QLabel(tr("Outline from a file"), this);
  title->setFont(paint::sized(font(), 1.6, true));
  whole->addWidget(title);
  m_file = new QLabel(this);
  m_file->setFont(paint::sized(font(), 1.0, true));
  whole->addWidget(m_file);
  auto* scroll = new QScrollArea(this);
  scroll->setWidgetResizable(true);
  scroll->setFrameShape(QFrame::NoFrame);
  scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  scroll->setFocusPolicy(Qt::NoFocus);
  auto* inside = new QWidget(scroll);
  auto* column = new QVBoxLayout(inside);
  column->setContentsMargins(0, 0, qRound(8 * paint::uiScale(font())), 0);
  column->setSpacing(6);
  m_about = secondary({}, inside);
  column->addWidget(m_about);
  m_warning = new SideNote(SideNote::Kind::warning, inside);
  m_warning->hide();
  column->addWidget(m_warning);
  makeDrawingChoice(column);
  makeRingChoice(column);
  column->addStretch();
  scroll->setWidget(inside);
  whole->addWidget(scroll, 1);
  auto* ends = new QHBoxLayout;
  m_take = new QPushButton(tr("Take it"), this);
  m_take->setProperty("role", QStringLiteral("primary"));
  m_give_up = new QPushButton(tr("Give up"), this);
  ends->addWidget(m_take, 1);
  ends->addWidget(m_give_up);
  whole->addLayout(ends);
  connect(m_take, &QPushButton::clicked, this, &ImportPage::take);
  connect(m_give_up, &QPushButton::clicked, this, &ImportPage::givenUp);
}

void ImportPage::makeDrawingChoice(QVBoxLayout* column) {
  m_drawing = new QWidget(this);
  auto* part = new QVBoxLayout(m_drawing);
  part->setContentsMargins(0, 0, 0, 0);
  part->setSpacing(6);
  part->addWidget(secondary(tr("One unit of the drawing is"), m_drawing));
  m_unit = new QComboBox(m_drawing);
  m_unit->setAccessibleName(tr("One unit of the drawing is"));
  m_unit->setPlaceholderText(tr("choose"));
  for (const DrawingUnit& unit : kDrawingUnits) m_unit->addItem(tr(unit.name), unit.metres);
  part->addWidget(m_unit);
  part->addWidget(secondary(tr("Layers the outside walls are on"), m_drawing));
  m_layers = new QListWidget(m_drawing);
  m_layers->setProperty("choice", true);
  m_layers->setAccessibleName(tr("Layers"));
  m_layers->setFixedHeight(qRound(84 * paint::uiScale(font())));
  part->addWidget(m_layers);
  column->addWidget(m_drawing);
  connect(m_unit, &QComboBox::currentIndexChanged, this, &ImportPage::findRings);
  connect(m_layers, &QListWidget::itemChanged, this, &ImportPage::findRings);
}

void ImportPage::makeRingChoice(QVBoxLayout* column) {
  m_rings = new QWidget(this);
  auto* part = new QVBoxLayout(m_rings);
  part->setContentsMargins(0, 0, 0, 0);
  part->setSpacing(6);
  m_preview = new RingPreview(m_rings);
  m_preview->setFixedHeight(m_preview->sizeHint().height());
  part->addWidget(m_preview);
  part->addWidget(secondary(tr("Outside wall"), m_rings));
  m_outer = new QComboBox(m_rings);
  m_outer->setAccessibleName(tr("Outside wall"));
  m_outer->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  part->addWidget(m_outer);
  m_courtyards_label = secondary(tr("Courtyards"), m_rings);
  part->addWidget(m_courtyards_label);
  m_courtyards = new QListWidget(m_rings);
  m_courtyards->setProperty("choice", true);
  m_courtyards->setAccessibleName(tr("Courtyards"));
  m_courtyards->setFixedHeight(qRound(64 * paint::uiScale(font())));
  part->addWidget(m_courtyards);
  m_left_out = secondary({}, m_rings);
  part->addWidget(m_left_out);
  column->addWidget(m_rings);
  connect(m_outer, &QComboBox::currentIndexChanged, this, [this] {
    if (!m_filling) fillCourtyards();
  });
  connect(m_courtyards, &QListWidget::itemChanged, this, [this] {
    if (!m_filling) refreshPreview();
  });
}

void ImportPage::begin(session::OutlineImport import) {
  m_import = std::move(import);
  const QString path = QString::fromStdString(m_import->path());
  m_file->setText(m_file->fontMetrics().elidedText(QFileInfo(path).fileName(), Qt::ElideMiddle,
                                                   qRound(280 * paint::uiScale(font()))));
  m_file->setToolTip(path);
  m_filling = true;
  const files::DxfDrawing* drawing = m_import->drawing();
  m_drawing->setVisible(drawing != nullptr);
  m_unit->setCurrentIndex(-1);
  m_layers->clear();
  if (drawing != nullptr) {
    for (const files::DxfLayer& layer : drawing->layers) {
      const int there = layer.lines + layer.polylines;
      if (there == 0) continue;
      auto* row = new QListWidgetItem(
          tr("%1  (%2)").arg(QString::fromStdString(layer.name)).arg(there), m_layers);
      row->setData(Qt::UserRole, QString::fromStdString(layer.name));
      row->setCheckState(Qt::Checked);
    }
    if (drawing->metres_per_unit) {
      const auto is = [&](const DrawingUnit& u) { return u.metres == *drawing->metres_per_unit; };
      const auto it = std::find_if(kDrawingUnits.begin(), kDrawingUnits.end(), is);
      if (it != kDrawingUnits.end()) {
        m_unit->setCurrentIndex(static_cast<int>(it - kDrawingUnits.begin()));
      }
    }
    m_about->setText(m_unit->currentIndex() < 0
                         ? tr("The drawing does not say what its unit is: choose it, and see "
                              "whether the sizes are those of a house.")
                         : tr("The unit is the one the drawing states. That is often wrong: see "
                              "whether the sizes are those of a house."));
  } else {
    m_about->setText(
        tr("Metres about %1° N, %2° E; up the sheet is true north. Turning degrees into metres "
           "adds less than 0.1 mm within 200 m; 1000 m above the sea the ground is 16 mm in 100 m "
           "longer. How true the map itself is, it does not say: tape one wall.")
            .arg(m_import->map()->centre.lat_deg, 0, 'f', 4)
            .arg(m_import->map()->centre.lon_deg, 0, 'f', 4));
  }
  m_filling = false;
  findRings();
}

void ImportPage::takeFocus() {
  QWidget* first =
      m_import && m_import->drawing() != nullptr ? static_cast<QWidget*>(m_unit) : m_outer;
  (first->isEnabled() ? first : m_give_up)->setFocus(Qt::OtherFocusReason);
}

void ImportPage::changeEvent(QEvent* event) {
  if (event->type() == QEvent::PaletteChange) m_preview->update();
  QWidget::changeEvent(event);
}

void ImportPage::findRings() {
  if (m_filling || !m_import) return;
  m_warning->hide();
  if (m_import->drawing() != nullptr && m_unit->currentIndex() >= 0) {
    std::vector<std::string> layers;
    for (int i = 0; i < m_layers->count(); ++i) {
      if (m_layers->item(i)->checkState() != Qt::Checked) continue;
      layers.push_back(m_layers->item(i)->data(Qt::UserRole).toString().toStdString());
    }
    // An empty list would mean all of them.
    if (layers.empty()) layers.push_back({});
    const base::Problems problems = m_import->choose(m_unit->currentData().toDouble(), layers);
    if (!problems.empty()) {
      m_warning->setText(said(problems.front().message, m_session.job()));
      m_warning->show();
    }
  }
  fillRings();
}

QString ImportPage::sizeText(const geometry::Polygon& ring) const {
  const Extents e = extentsOf(ring);
  const plan::Job& job = m_session.job();
  return QStringLiteral("%1 × %2").arg(tapedLength(e.high.x - e.low.x, job),
                                       tapedLength(e.high.y - e.low.y, job));
}

void ImportPage::fillRings() {
  const bool asked = m_import->drawing() != nullptr && !m_import->metresPerUnit();
  const auto& outlines = m_import->outlines();
  m_filling = true;
  m_outer->clear();
  for (const files::Outline& outline : outlines) {
    QString text =
        tr("%1, %2").arg(printedArea(outline.area_m2, m_session.job()), sizeText(outline.outer));
    if (!outline.name.empty()) text += tr(", %1").arg(QString::fromStdString(outline.name));
    m_outer->addItem(text);
  }
  m_filling = false;
  m_rings->setVisible(!asked);
  m_outer->setEnabled(!outlines.empty());
  if (!asked && outlines.empty()) {
    m_warning->setText(tr("There is no closed outline in it that could be a house."));
    m_warning->show();
  }
  QStringList lines;
  std::vector<base::Message> reasons = m_import->leftOut();
  if (m_import->drawing() != nullptr) {
    const auto& more = m_import->drawing()->left_out;
    reasons.insert(reasons.end(), more.begin(), more.end());
  }
  for (const base::Message& reason : reasons) lines << said(reason, m_session.job());
  m_left_out->setText(lines.join(QLatin1Char('\n')));
  m_left_out->setVisible(!lines.isEmpty());
  const bool replaces =
      !m_session.job().plan.rings.empty() && m_session.job().plan.rings.front().corners.size() > 1;
  m_take->setText(replaces ? tr("Replace the outline") : tr("Take it"));
  m_take->setToolTip(replaces
                         ? tr("What stands on the walls that are there goes with them; undo brings "
                              "it back")
                         : QString());
  m_take->setEnabled(!outlines.empty());
  fillCourtyards();
}

void ImportPage::fillCourtyards() {
  m_filling = true;
  m_courtyards->clear();
  if (m_outer->currentIndex() >= 0) {
    const auto outer = static_cast<std::size_t>(m_outer->currentIndex());
    for (const session::CourtyardOffer& offer : m_import->courtyardsOf(outer)) {
      auto* row = new QListWidgetItem(
          tr("%1, %2").arg(printedArea(offer.area_m2, m_session.job()), sizeText(offer.ring)),
          m_courtyards);
      row->setCheckState(offer.likely ? Qt::Checked : Qt::Unchecked);
      if (!offer.likely) row->setToolTip(tr("So large: rather the inner face of the walls"));
    }
  }
  m_filling = false;
  const bool any = m_courtyards->count() > 0;
  m_courtyards->setVisible(any);
  m_courtyards_label->setVisible(any);
  refreshPreview();
}

std::set<std::size_t> ImportPage::chosenCourtyards() const {
  std::set<std::size_t> chosen;
  for (int i = 0; i < m_courtyards->count(); ++i) {
    if (m_courtyards->item(i)->checkState() == Qt::Checked) {
      chosen.insert(static_cast<std::size_t>(i));
    }
  }
  return chosen;
}

void ImportPage::refreshPreview() {
  if (m_outer->currentIndex() < 0) return m_preview->show({}, {}, {});
  const auto outer = static_cast<std::size_t>(m_outer->currentIndex());
  std::vector<geometry::Polygon> others;
  for (const files::Outline& outline : m_import->outlines()) others.push_back(outline.outer);
  std::vector<geometry::Polygon> courtyards;
  const auto offers = m_import->courtyardsOf(outer);
  for (const std::size_t i : chosenCourtyards()) courtyards.push_back(offers[i].ring);
  m_preview->show(others, m_import->outlines()[outer].outer, courtyards);
}

void ImportPage::take() {
  if (m_outer->currentIndex() < 0) return;
  const auto outer = static_cast<std::size_t>(m_outer->currentIndex());
  const base::Problems problems =
      m_session.edit(tr("Take an outline from a file"),
                     m_import->takenInto(m_session.job(), outer, chosenCourtyards()));
  if (problems.empty()) return Q_EMIT taken();
  m_warning->setText(said(problems.front().message, m_session.job()));
  m_warning->show();
}

}  // namespace sumpwright::stages
