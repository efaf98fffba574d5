// PictureDesk: which picture, read and laid. Its gestures stand in PictureTools.cpp.

#include "session/PictureDesk.h"

#include <QDateTime>
#include <QDir>
#include <QFileInfo>
#include <algorithm>
#include <cmath>
#include <utility>

#include "files/Underlay.h"
#include "files/UnderlayBeside.h"
#include "plan/FactEdits.h"
#include "session/PictureReading.h"

namespace sumpwright::session {

namespace {

using geometry::Point;

/// How large a photo lies at first, before anybody has said how large it is: as a house (own
/// figures); around what is drawn, a little more than that.
constexpr double kUsualHouse_m = 14.0;
constexpr double kAround = 1.25;
/// Sheets are drawn 1:100 more often than not (common practice).
constexpr double kUsualSheet = 100.0;
constexpr double kFirstFade = 0.35;  // own figure

QString fileName(const std::string& path) {
  return QFileInfo(QString::fromStdString(path)).fileName();
}

struct Box {
  Point low;
  Point high;
};

std::optional<Box> boxOf(const plan::Plan& plan) {
  std::optional<Box> box;
  for (const plan::Ring& ring : plan.rings) {
    for (const Point p : ring.corners) {
      if (!box) box = Box{p, p};
      box->low = {std::min(box->low.x, p.x), std::min(box->low.y, p.y)};
      box->high = {std::max(box->high.x, p.x), std::max(box->high.y, p.y)};
    }
  }
  return box;
}

}  // namespace

PictureDesk::PictureDesk(Session& session, QObject* parent) : QObject(parent), m_session(session) {
  m_pool.setMaxThreadCount(1);  // two photos at once would take the memory of two
  connect(&session, &Session::jobChanged, this, [this] {
    stopReading();
    m_note.clear();
    dropTool();
    showNothing();
    m_told.reset();
    follow();
    Q_EMIT changed();
    Q_EMIT layerChanged();
  });
  connect(&session, &Session::studyChanged, this, &PictureDesk::follow);
  // Saved elsewhere, the same relative path means another file.
  connect(&session, &Session::savedStateChanged, this, &PictureDesk::follow);
}

PictureDesk::~PictureDesk() {
  stopReading();
  m_pool.waitForDone();
}

const plan::Underlay* PictureDesk::underlay() const {
  if (!m_session.hasJob() || !m_session.job().plan.underlay) return nullptr;
  return &*m_session.job().plan.underlay;
}

QString PictureDesk::readingName() const {
  return m_reading ? fileName(m_reading->wanted.file) : QString();
}

/// The picture that should be on show: the photo itself while its corners are set.
PictureWanted PictureDesk::wantedNow() const {
  PictureWanted wanted = wantedOf(*underlay(), jobFile());
  if (m_tool == Tool::straighten) wanted.straighten.reset();
  return wanted;
}

void PictureDesk::showNothing() {
  m_wanted.reset();
  m_shown.reset();
  m_problems.clear();
  ++m_revision;
}

/// What is shown follows the job.
void PictureDesk::follow() {
  if (m_saving) return;  // its path means something only once the job is where it goes
  if (underlay() == nullptr) {
    if (m_reading && !m_reading->choice) stopReading();
    if (m_wanted) showNothing();
    dropTool();
  } else {
    const PictureWanted wanted = wantedNow();
    const bool on_its_way = m_reading && (m_reading->choice || m_reading->wanted == wanted);
    if (wanted != m_wanted && !on_its_way) read(wanted, std::nullopt);
  }
  tellIfOther();
}

/// Not with every move of a wall: what is told is painted.
void PictureDesk::tellIfOther() {
  const auto now = underlay() == nullptr ? std::nullopt : std::optional(*underlay());
  if (now == m_told) return;
  m_told = now;
  Q_EMIT changed();
  Q_EMIT layerChanged();
}

/// Small steps of one kind, closer together than this, are one gesture.
int PictureDesk::gestureOf(Small kind) {
  constexpr qint64 kPause_ms = 800;  // own figure, as for the sump's arrow keys
  const qint64 now = QDateTime::currentMSecsSinceEpoch();
  if (kind != m_small || now - m_small_at_ms > kPause_ms) m_small_gesture = m_session.newGesture();
  m_small = kind;
  m_small_at_ms = now;
  return m_small_gesture;
}

void PictureDesk::read(PictureWanted wanted, std::optional<Choice> choice) {
  stopReading();
  auto reading = std::make_shared<Reading>();
  reading->wanted = std::move(wanted);
  reading->choice = std::move(choice);
  reading->job_file = jobFile();
  const bool has_photo = m_shown && m_wanted && !m_wanted->straighten &&
                         m_wanted->file == reading->wanted.file &&
                         m_wanted->page == reading->wanted.page && reading->wanted.straighten;
  if (has_photo) reading->photo = m_shown;
  m_reading = reading;
  m_pool.start([this, reading] {
    reading->work();
    QMetaObject::invokeMethod(
        this, [this, reading] { finishReading(reading); }, Qt::QueuedConnection);
  });
  Q_EMIT changed();
}

void PictureDesk::stopReading() {
  if (m_reading) m_reading->given_up = true;
  m_reading.reset();
}

void PictureDesk::giveUpReading() {
  if (!m_reading) return;
  const auto reading = m_reading;
  stopReading();
  if (!reading->choice) {
    showNothing();
    m_wanted = reading->wanted;  // not tried again by itself
    m_problems = {{base::Message("underlay.given-up", {base::text("file", reading->wanted.file)}),
                   "/plan/underlay/path", base::Gravity::missing}};
  }
  Q_EMIT changed();
  Q_EMIT layerChanged();
}

void PictureDesk::finishReading(const std::shared_ptr<Reading>& reading) {
  if (reading != m_reading || !reading->result) return;
  m_reading.reset();
  if (!reading->result->ok()) {
    const base::Problems problems = reading->result->problems();
    if (!reading->choice) {
      showNothing();
      m_wanted = reading->wanted;
    }
    m_problems = problems;
    for (base::Problem& p : m_problems) {
      p.pointer = "/plan/underlay/path";
      p.gravity = base::Gravity::missing;
    }
  } else {
    showNothing();
    m_wanted = reading->wanted;
    m_shown = **reading->result;
    m_sample.reset();
    if (reading->choice) layDown(*reading);
    if (m_tool == Tool::straighten && !m_corners_set) beginCorners();
  }
  m_told.reset();
  follow();  // the job may have gone on meanwhile
  Q_EMIT changed();
  Q_EMIT layerChanged();
}

void PictureDesk::choose(const QString& file, int page) {
  if (!m_session.hasJob()) return;
  dropTool();
  m_note.clear();
  m_problems.clear();
  const QString absolute = QFileInfo(file).absoluteFilePath();
  read({absolute.toStdString(), page, std::nullopt}, Choice{});
}

void PictureDesk::find(const QString& file) {
  if (underlay() == nullptr) return choose(file);
  dropTool();
  m_note.clear();
  const QString absolute = QFileInfo(file).absoluteFilePath();
  PictureWanted wanted = wantedNow();
  wanted.file = absolute.toStdString();
  read(wanted, Choice{*underlay()});
}

void PictureDesk::lookAgain() {
  if (underlay() == nullptr || m_shown || m_reading) return;
  m_wanted.reset();
  follow();
}

void PictureDesk::showPage(int page) {
  if (underlay() == nullptr || page == underlay()->page) return;
  plan::Underlay other = *underlay();
  other.page = page;
  other.straighten.reset();  // its corners were those of the other page
  dropTool();
  put(tr("Choose another page"), other);
}

/// Around what is drawn, or where an empty plan is looked at.
plan::Underlay PictureDesk::placedFresh(const PictureReady& ready) const {
  plan::Underlay fresh;
  const double wide = ready.photo.width();
  const double high = ready.photo.height();
  Point middle{};
  double longest = kUsualHouse_m;
  if (const auto box = boxOf(m_session.job().plan)) {
    middle = geometry::lerp(box->low, box->high, 0.5);
    const double drawn = std::max(box->high.x - box->low.x, box->high.y - box->low.y);
    if (drawn > 1.0) longest = kAround * drawn;
  }
  fresh.m_per_px =
      ready.sheet_m_per_px ? kUsualSheet * *ready.sheet_m_per_px : longest / std::max(wide, high);
  fresh.at_m = {middle.x - 0.5 * wide * fresh.m_per_px, middle.y + 0.5 * high * fresh.m_per_px};
  fresh.locked = false;
  fresh.fade = kFirstFade;
  return fresh;
}

/// A chosen picture, once it is read.
void PictureDesk::layDown(const Reading& reading) {
  const Choice& choice = *reading.choice;
  plan::Underlay laid = choice.keep ? *choice.keep : placedFresh(*m_shown);
  laid.page = reading.wanted.page;
  laid.path = reading.path;
  laid.shown = true;
  m_wanted = wantedOf(laid, jobFile());
  if (!reading.not_beside.empty()) {
    m_problems = reading.not_beside;
    m_note = tr("The picture stays where it is.");
  } else if (reading.copied) {
    m_note = tr("A copy was put beside the job: %1.").arg(fileName(reading.path));
  } else if (reading.job_file.empty()) {
    m_note =
        tr("The job has no file yet. When you save it, a copy of the picture is put beside it.");
  }
  put(choice.keep ? tr("Find the picture") : tr("Lay a picture under the plan"), laid);
}

void PictureDesk::remove() {
  if (underlay() == nullptr) return;
  dropTool();
  m_note.clear();
  m_session.edit(tr("Remove the picture"), plan::setUnderlay(m_session.job(), std::nullopt));
}

void PictureDesk::setLocked(bool locked) {
  if (underlay() == nullptr || underlay()->locked == locked) return;
  plan::Underlay other = *underlay();
  other.locked = locked;
  put(locked ? tr("Lock the picture") : tr("Unlock the picture"), other);
}

void PictureDesk::setShown(bool shown) {
  if (underlay() == nullptr || underlay()->shown == shown) return;
  plan::Underlay other = *underlay();
  other.shown = shown;
  put(shown ? tr("Show the picture") : tr("Hide the picture"), other);
}

void PictureDesk::setFade(double fade, int gesture) {
  if (underlay() == nullptr) return;
  plan::Underlay other = *underlay();
  other.fade = std::clamp(fade, 0.0, 1.0);
  put(tr("Fade the picture"), other, gesture == 0 ? gestureOf(Small::fade) : gesture);
}

bool PictureDesk::put(const QString& text, const plan::Underlay& underlay, int gesture) {
  const base::Problems problems =
      m_session.edit(text, plan::setUnderlay(m_session.job(), underlay), gesture);
  if (problems.empty()) return true;
  m_problems = problems;
  Q_EMIT changed();
  return false;
}

base::Problems PictureDesk::beginSaving(const QString& job_file) {
  m_saving.reset();
  if (underlay() == nullptr) return {};
  const std::string file = files::besideJob(underlay()->path, jobFile());
  if (!QFileInfo::exists(QString::fromStdString(file))) return {};  // missing before, missing now
  const auto beside = files::takeBeside(file, job_file.toStdString());
  plan::Underlay moved = *underlay();
  moved.path = beside.ok() ? *beside : file;
  m_saving = Saving{moved.path != underlay()->path, m_shown && m_wanted == wantedNow()};
  if (m_saving->edited) put(tr("Keep the picture beside the job"), moved);
  return beside.problems();
}

void PictureDesk::endSaving(bool saved) {
  if (!m_saving) return;
  const Saving saving = *std::exchange(m_saving, std::nullopt);
  if (saving.edited && !saved) m_session.undoStack().undo();
  // The same picture in another place: not read again.
  if (saving.shown && underlay() != nullptr) m_wanted = wantedNow();
  if (saving.edited && saved) m_note.clear();
  m_told.reset();
  follow();
}

void PictureDesk::Reading::work() {
  result = readPicture(wanted, photo, given_up);
  if (!choice || !result || !result->ok()) return;
  path = wanted.file;
  if (job_file.empty()) return;
  const auto beside = files::takeBeside(wanted.file, job_file);
  not_beside = beside.problems();
  if (!beside.ok()) return;
  path = *beside;
  const auto real = [](const std::string& file) {
    return QFileInfo(QString::fromStdString(file)).canonicalFilePath();
  };
  copied = real(files::besideJob(path, job_file)) != real(wanted.file);
}

}  // namespace sumpwright::session
