#include "window/Actions.h"

#include <QCoreApplication>
#include <QKeySequence>
#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include "plan/ThingEdits.h"
#include "window/MainWindow.h"

namespace sumpwright::window {

namespace {

using paint::Glyph;

constexpr Glyph kUndo = Glyph::undo;
constexpr Glyph kRedo = Glyph::redo;
constexpr Glyph kSheet = Glyph::sheet;
constexpr Glyph kPlus = Glyph::plus;
constexpr Glyph kMinus = Glyph::minus;
constexpr Glyph kFit = Glyph::fit;
constexpr Glyph kPrevious = Glyph::previous_stretch;
constexpr Glyph kNext = Glyph::next_stretch;
constexpr Glyph kPrinter = Glyph::printer;
constexpr Glyph kPageLeft = Glyph::page_left;
constexpr Glyph kPageRight = Glyph::page_right;

bool hasJob(const MainWindow& w) { return w.session().hasJob(); }
bool hasStudy(const MainWindow& w) { return w.session().study() != nullptr; }
bool hasPaper(const MainWindow& w) { return hasStudy(w) && w.paper().hasPaper(); }
bool hasCore(const MainWindow& w, double core_mm) {
  return hasStudy(w) && std::abs(w.session().study()->site().core_m * 1000.0 - core_mm) < 1e-6;
}
/// Arrow keys on the plan are the sump's only while it is sited.
bool hasSump(const MainWindow& w) {
  return w.session().assessment() != nullptr && w.stage() != Stage::survey;
}
bool isWhole(const MainWindow& w) {
  return hasJob(w) && !w.session().job().plan.rings.empty() &&
         w.session().job().plan.rings.front().closed;
}

bool hasThing(const MainWindow& w) {
  return hasJob(w) && plan::thingOf(w.session().job(), w.session().selected()).has_value();
}
bool hasTwoThings(const MainWindow& w) {
  return hasThing(w) && plan::thingOf(w.session().job(), w.tasks().chosenBefore()).has_value();
}

constexpr std::array kTable{
    ActionSpec{"file.new", Menu::file, QT_TRANSLATE_NOOP("Actions", "&New job"), "Ctrl+N",
               Reach::window,
               QT_TRANSLATE_NOOP("Actions", "Begins a job of a house that is yet to be drawn."),
               [](MainWindow& w) { w.newJob(); }},
    ActionSpec{"file.open", Menu::file, QT_TRANSLATE_NOOP("Actions", "&Open…"), "Ctrl+O",
               Reach::window, QT_TRANSLATE_NOOP("Actions", "Opens a job file (NAME.sump.json)."),
               [](MainWindow& w) { w.open(); }},
    ActionSpec{"file.save", Menu::file, QT_TRANSLATE_NOOP("Actions", "&Save"), "Ctrl+S",
               Reach::window, QT_TRANSLATE_NOOP("Actions", "Writes the job back to its file."),
               [](MainWindow& w) { w.save(); }, hasJob},
    ActionSpec{"file.save_as", Menu::file, QT_TRANSLATE_NOOP("Actions", "Save &as…"),
               "Ctrl+Shift+S", Reach::window,
               QT_TRANSLATE_NOOP("Actions", "Writes the job to another file."),
               [](MainWindow& w) { w.saveAs(); }, hasJob},
    ActionSpec{"file.close", Menu::file, QT_TRANSLATE_NOOP("Actions", "&Close job"), "Ctrl+W",
               Reach::window,
               QT_TRANSLATE_NOOP("Actions", "Closes the job, asking first about changes."),
               [](MainWindow& w) { w.closeJob(); }, hasJob},
    ActionSpec{"file.quit", Menu::file, QT_TRANSLATE_NOOP("Actions", "&Quit"), "Ctrl+Q",
               Reach::window,
               QT_TRANSLATE_NOOP("Actions", "Leaves the program, asking first about changes."),
               [](MainWindow& w) { w.close(); }, nullptr, nullptr, nullptr, true},

    ActionSpec{"edit.undo", Menu::edit, QT_TRANSLATE_NOOP("Actions", "&Undo"), "Ctrl+Z",
               Reach::window, QT_TRANSLATE_NOOP("Actions", "Takes the last step back."),
               [](MainWindow& w) { w.undo(); }, [](const MainWindow& w) { return w.canUndo(); },
               nullptr, &kUndo},
    ActionSpec{"edit.redo", Menu::edit, QT_TRANSLATE_NOOP("Actions", "&Redo"),
               "Ctrl+Shift+Z; Ctrl+Y", Reach::window,
               QT_TRANSLATE_NOOP("Actions", "Takes the last undone step again."),
               [](MainWindow& w) { w.redo(); }, [](const MainWindow& w) { return w.canRedo(); },
               nullptr, &kRedo},
    ActionSpec{"survey.copy", Menu::edit, QT_TRANSLATE_NOOP("Actions", "Cop&y beside"), "Ctrl+D",
               Reach::window,
               QT_TRANSLATE_NOOP("Actions",
                                 "Copies the chosen thing beside itself; again: by the same step."),
               [](MainWindow& w) { w.makeAlike(Alike::copy); }, hasThing, nullptr, nullptr, true},
    ActionSpec{"survey.in_line", Menu::edit, QT_TRANSLATE_NOOP("Actions", "&Bring in line"),
               "Ctrl+I", Reach::window,
               QT_TRANSLATE_NOOP("Actions",
                                 "Slides the chosen thing along its wall until it is in line with "
                                 "the one chosen before."),
               [](MainWindow& w) { w.makeAlike(Alike::in_line); }, hasTwoThings},
    ActionSpec{"survey.same_size", Menu::edit, QT_TRANSLATE_NOOP("Actions", "Make the same si&ze"),
               "Ctrl+Shift+I", Reach::window,
               QT_TRANSLATE_NOOP("Actions",
                                 "Gives the chosen opening the width, sill and head of the one "
                                 "chosen before."),
               [](MainWindow& w) { w.makeAlike(Alike::size); }, hasTwoThings},

    ActionSpec{"survey.house", Menu::survey, QT_TRANSLATE_NOOP("Actions", "H&ouse and job"),
               "Ctrl+H", Reach::window,
               QT_TRANSLATE_NOOP("Actions",
                                 "Address, year, build-up, levels, whose leave is needed, standby "
                                 "sump."),
               [](MainWindow& w) { w.showSurvey(stages::SurveyPage::house); }, hasJob},
    ActionSpec{"survey.outline", Menu::survey, QT_TRANSLATE_NOOP("Actions", "&Tape the outline"),
               "Ctrl+L", Reach::window,
               QT_TRANSLATE_NOOP("Actions", "Walls of the house: direction, length, Enter."),
               [](MainWindow& w) { w.showSurvey(stages::SurveyPage::outline); }, hasJob},
    ActionSpec{"survey.picture", Menu::survey,
               QT_TRANSLATE_NOOP("Actions", "Lay a &picture under the plan…"), "Ctrl+U",
               Reach::window,
               QT_TRANSLATE_NOOP("Actions",
                                 "A plan, sketch or photo to trace: PNG, JPEG, SVG or a page of a "
                                 "PDF; scaled, straightened, faded."),
               [](MainWindow& w) { w.showPicture(); }, hasJob},
    ActionSpec{"survey.import", Menu::survey,
               QT_TRANSLATE_NOOP("Actions", "Ta&ke an outline from a drawing or map…"),
               "Ctrl+Shift+U", Reach::window,
               QT_TRANSLATE_NOOP("Actions",
                                 "Reads the outside walls from a DXF drawing or a GeoJSON map."),
               [](MainWindow& w) { w.takeOutline(); }, hasJob},
    ActionSpec{
        "survey.things", Menu::survey, QT_TRANSLATE_NOOP("Actions", "T&hings on the plan"),
        "Ctrl+T", Reach::window,
        QT_TRANSLATE_NOOP("Actions", "Windows, doors, services, inner walls: typed from a corner."),
        [](MainWindow& w) { w.showSurvey(stages::SurveyPage::things); }, hasJob},
    ActionSpec{
        "survey.looked", Menu::survey, QT_TRANSLATE_NOOP("Actions", "&Looked for"), "Ctrl+Shift+L",
        Reach::window,
        QT_TRANSLATE_NOOP("Actions", "What was looked for on site, and whether it is there."),
        [](MainWindow& w) { w.showSurvey(stages::SurveyPage::looked); }, hasJob},
    ActionSpec{"survey.check", Menu::survey, QT_TRANSLATE_NOOP("Actions", "&Check the plan"),
               "Ctrl+J", Reach::window,
               QT_TRANSLATE_NOOP("Actions",
                                 "Lists what cannot be and what is not known yet; each line leads "
                                 "to the thing."),
               [](MainWindow& w) { w.showSurvey(stages::SurveyPage::check); }, hasJob},
    ActionSpec{"survey.rooms", Menu::survey, QT_TRANSLATE_NOOP("Actions", "&Rooms from walls"),
               "Ctrl+R", Reach::window,
               QT_TRANSLATE_NOOP("Actions", "Makes a room of every area that walls close off."),
               [](MainWindow& w) { w.editPlan(PlanEdit::rooms); }, isWhole, nullptr, nullptr, true},
    ActionSpec{
        "survey.floor", Menu::survey, QT_TRANSLATE_NOOP("Actions", "&Floor from walls"),
        "Ctrl+Shift+F", Reach::window,
        QT_TRANSLATE_NOOP("Actions", "Lays a floor of unknown kind wherever there is none yet."),
        [](MainWindow& w) { w.editPlan(PlanEdit::floor); }, isWhole},
    ActionSpec{"survey.square", Menu::whole_plan,
               QT_TRANSLATE_NOOP("Actions", "Make corners &square"), "", Reach::window,
               QT_TRANSLATE_NOOP("Actions",
                                 "Brings corners within 5 degrees of a right angle to one exactly, "
                                 "with the least movement."),
               [](MainWindow& w) { w.editPlan(PlanEdit::square); }, isWhole},
    ActionSpec{"survey.mirror", Menu::whole_plan, QT_TRANSLATE_NOOP("Actions", "&Mirror the plan"),
               "", Reach::window,
               QT_TRANSLATE_NOOP("Actions",
                                 "Swaps left and right of the whole house: a plan drawn the wrong "
                                 "way round. Waivers lapse."),
               [](MainWindow& w) { w.editPlan(PlanEdit::mirror); }, isWhole},
    ActionSpec{"survey.other_half", Menu::whole_plan,
               QT_TRANSLATE_NOOP("Actions", "Make it the &other half"), "", Reach::window,
               QT_TRANSLATE_NOOP("Actions",
                                 "Mirrors the plan for the other house of a pair, where nothing "
                                 "was looked for or located yet."),
               [](MainWindow& w) { w.editPlan(PlanEdit::other_half); }, isWhole},
    ActionSpec{"survey.turn_left", Menu::whole_plan,
               QT_TRANSLATE_NOOP("Actions", "Turn the plan le&ft"), "", Reach::window,
               QT_TRANSLATE_NOOP("Actions", "Turns house and north a quarter counter-clockwise."),
               [](MainWindow& w) { w.editPlan(PlanEdit::turn_left); }, isWhole},
    ActionSpec{"survey.turn_right", Menu::whole_plan,
               QT_TRANSLATE_NOOP("Actions", "Turn the plan r&ight"), "", Reach::window,
               QT_TRANSLATE_NOOP("Actions", "Turns house and north a quarter clockwise."),
               [](MainWindow& w) { w.editPlan(PlanEdit::turn_right); }, isWhole},

    ActionSpec{"sump.best", Menu::sump, QT_TRANSLATE_NOOP("Actions", "&Best place"), "Ctrl+B",
               Reach::window,
               QT_TRANSLATE_NOOP("Actions",
                                 "Puts the sump where the score is highest; where nothing is "
                                 "allowed, at the least bad place."),
               [](MainWindow& w) { w.goBest(); },
               [](const MainWindow& w) { return w.session().bestPlace().has_value(); }},
    ActionSpec{"sump.previous_allowed", Menu::sump,
               QT_TRANSLATE_NOOP("Actions", "&Previous clear stretch"), "Ctrl+Left", Reach::drawing,
               QT_TRANSLATE_NOOP("Actions",
                                 "Moves the sump left along the wall to the next clear stretch."),
               [](MainWindow& w) { w.goAllowed(-1); },
               [](const MainWindow& w) { return w.session().nextAllowed(-1).has_value(); }, nullptr,
               &kPrevious},
    ActionSpec{"sump.next_allowed", Menu::sump, QT_TRANSLATE_NOOP("Actions", "&Next clear stretch"),
               "Ctrl+Right", Reach::drawing,
               QT_TRANSLATE_NOOP("Actions",
                                 "Moves the sump right along the wall to the next clear stretch."),
               [](MainWindow& w) { w.goAllowed(+1); },
               [](const MainWindow& w) { return w.session().nextAllowed(+1).has_value(); }, nullptr,
               &kNext},
    ActionSpec{
        "sump.left", Menu::sump, QT_TRANSLATE_NOOP("Actions", "&Left 10 cm"), "Left; Down",
        Reach::drawing,
        QT_TRANSLATE_NOOP("Actions", "Moves the sump left along the wall, as seen from outside."),
        [](MainWindow& w) { w.nudge(-tools::kStep_m); }, hasSump, nullptr, nullptr, true},
    ActionSpec{
        "sump.right", Menu::sump, QT_TRANSLATE_NOOP("Actions", "&Right 10 cm"), "Right; Up",
        Reach::drawing,
        QT_TRANSLATE_NOOP("Actions", "Moves the sump right along the wall, as seen from outside."),
        [](MainWindow& w) { w.nudge(tools::kStep_m); }, hasSump},
    ActionSpec{"sump.left_fine", Menu::sump, QT_TRANSLATE_NOOP("Actions", "Left 1 cm"),
               "Shift+Left; Shift+Down", Reach::drawing,
               QT_TRANSLATE_NOOP("Actions", "Moves the sump left by the width of a finger."),
               [](MainWindow& w) { w.nudge(-tools::kFineStep_m); }, hasSump},
    ActionSpec{"sump.right_fine", Menu::sump, QT_TRANSLATE_NOOP("Actions", "Right 1 cm"),
               "Shift+Right; Shift+Up", Reach::drawing,
               QT_TRANSLATE_NOOP("Actions", "Moves the sump right by the width of a finger."),
               [](MainWindow& w) { w.nudge(tools::kFineStep_m); }, hasSump},
    ActionSpec{"sump.go_to", Menu::sump, QT_TRANSLATE_NOOP("Actions", "Type a &place…"), "Ctrl+G",
               Reach::window,
               QT_TRANSLATE_NOOP("Actions",
                                 "Puts the sump at a typed distance from a corner. A digit "
                                 "typed on plan or tape begins it too."),
               [](MainWindow& w) { w.typePlace(); }, hasStudy, nullptr, nullptr, true},
    ActionSpec{"sump.waive", Menu::sump, QT_TRANSLATE_NOOP("Actions", "&Waive…"), "Ctrl+Shift+W",
               Reach::window,
               QT_TRANSLATE_NOOP("Actions",
                                 "Records why a refused place is accepted, where the rule may "
                                 "be waived."),
               [](MainWindow& w) { w.waive(); }, [](const MainWindow& w) { return w.mayWaive(); }},
    ActionSpec{"sump.remove", Menu::sump, QT_TRANSLATE_NOOP("Actions", "Re&move the sump"), "Del",
               Reach::drawing,
               QT_TRANSLATE_NOOP("Actions", "Takes the sump off the plan, waivers and all."),
               [](MainWindow& w) { w.session().removeSump(); }, hasSump},
    ActionSpec{"sump.outlet_low", Menu::sump,
               QT_TRANSLATE_NOOP("Actions", "Outlet low at the &hole"), "", Reach::window,
               QT_TRANSLATE_NOOP("Actions", "Judges fan and outlet where the hole is."),
               [](MainWindow& w) { w.session().setOutlet(plan::OutletMode::low); }, hasStudy,
               [](const MainWindow& w) {
                 return hasJob(w) && w.session().job().design.outlet == plan::OutletMode::low;
               },
               nullptr, true},
    ActionSpec{"sump.outlet_riser", Menu::sump, QT_TRANSLATE_NOOP("Actions", "Riser to the &eaves"),
               "", Reach::window,
               QT_TRANSLATE_NOOP("Actions",
                                 "Takes the outlet up to the eaves; until its end is placed no "
                                 "place is better than not proven."),
               [](MainWindow& w) { w.session().setOutlet(plan::OutletMode::riser); }, hasStudy,
               [](const MainWindow& w) {
                 return hasJob(w) && w.session().job().design.outlet == plan::OutletMode::riser;
               }},
    ActionSpec{"sump.core_127", Menu::sump, QT_TRANSLATE_NOOP("Actions", "Core 127 mm"), "",
               Reach::window,
               QT_TRANSLATE_NOOP("Actions", "A hole with room to seal round a 110 mm pipe."),
               [](MainWindow& w) { w.session().setCore(127.0); }, hasStudy,
               [](const MainWindow& w) { return hasCore(w, 127.0); }, nullptr, true},
    ActionSpec{"sump.core_112", Menu::sump, QT_TRANSLATE_NOOP("Actions", "Core 112 mm"), "",
               Reach::window,
               QT_TRANSLATE_NOOP("Actions",
                                 "A hole just wide enough for a 110 mm pipe: little to seal with."),
               [](MainWindow& w) { w.session().setCore(112.0); }, hasStudy,
               [](const MainWindow& w) { return hasCore(w, 112.0); }},

    ActionSpec{"view.survey", Menu::view, QT_TRANSLATE_NOOP("Actions", "S&urvey"), "Ctrl+1",
               Reach::window, QT_TRANSLATE_NOOP("Actions", "Shows plan, field book and survey."),
               [](MainWindow& w) { w.showStage(Stage::survey); }, nullptr,
               [](const MainWindow& w) { return w.stage() == Stage::survey; }},
    ActionSpec{"view.siting", Menu::view, QT_TRANSLATE_NOOP("Actions", "&Siting"), "Ctrl+2",
               Reach::window, QT_TRANSLATE_NOOP("Actions", "Shows plan, wall tape and verdict."),
               [](MainWindow& w) { w.showStage(Stage::siting); }, nullptr,
               [](const MainWindow& w) { return w.stage() == Stage::siting; }},
    ActionSpec{"view.suction", Menu::view, QT_TRANSLATE_NOOP("Actions", "S&uction"), "Ctrl+3",
               Reach::window,
               QT_TRANSLATE_NOOP(
                   "Actions", "Shows how far the suction is predicted to reach under the floor."),
               [](MainWindow& w) { w.showStage(Stage::suction); }, nullptr,
               [](const MainWindow& w) { return w.stage() == Stage::suction; }},
    ActionSpec{
        "view.run", Menu::view, QT_TRANSLATE_NOOP("Actions", "&Run"), "Ctrl+4", Reach::window,
        QT_TRANSLATE_NOOP("Actions", "Shows drill section, pipe, fan and where the air leaves."),
        [](MainWindow& w) { w.showStage(Stage::run); }, nullptr,
        [](const MainWindow& w) { return w.stage() == Stage::run; }},
    ActionSpec{"view.paper", Menu::view, QT_TRANSLATE_NOOP("Actions", "&Papers"), "Ctrl+5",
               Reach::window,
               QT_TRANSLATE_NOOP("Actions", "Shows the papers as they will be printed."),
               [](MainWindow& w) { w.showStage(Stage::paper); }, nullptr,
               [](const MainWindow& w) { return w.stage() == Stage::paper; }, &kSheet},
    ActionSpec{"view.zoom_in", Menu::view, QT_TRANSLATE_NOOP("Actions", "Zoom &in"),
               "+; =; Ctrl++; Ctrl+=", Reach::drawing,
               QT_TRANSLATE_NOOP("Actions", "Shows the plan larger."),
               [](MainWindow& w) { w.canvas().zoomBy(1.25); }, hasJob, nullptr, &kPlus, true},
    ActionSpec{"view.zoom_out", Menu::view, QT_TRANSLATE_NOOP("Actions", "Zoom &out"), "-; Ctrl+-",
               Reach::drawing, QT_TRANSLATE_NOOP("Actions", "Shows the plan smaller."),
               [](MainWindow& w) { w.canvas().zoomBy(0.8); }, hasJob, nullptr, &kMinus},
    ActionSpec{"view.zoom_fit", Menu::view, QT_TRANSLATE_NOOP("Actions", "&Fit the plan"),
               "Home; Ctrl+0", Reach::drawing,
               QT_TRANSLATE_NOOP("Actions", "Shows the whole plan."),
               [](MainWindow& w) { w.canvas().fit(); }, hasJob, nullptr, &kFit},
    ActionSpec{"view.next_part", Menu::view,
               QT_TRANSLATE_NOOP("Actions", "&Next part of the window"), "F6", Reach::window,
               QT_TRANSLATE_NOOP("Actions", "Moves the keys on: plan, wall tape, verdict."),
               [](MainWindow& w) { w.focusNextPart(); }},
    ActionSpec{"view.full_screen", Menu::view, QT_TRANSLATE_NOOP("Actions", "F&ull screen"), "F11",
               Reach::window, QT_TRANSLATE_NOOP("Actions", "Fills the screen, and back."),
               [](MainWindow& w) { w.toggleFullScreen(); }},
    ActionSpec{"view.theme_system", Menu::view,
               QT_TRANSLATE_NOOP("Actions", "Colours of the s&ystem"), "", Reach::window,
               QT_TRANSLATE_NOOP("Actions", "Light or dark as the system has it."),
               [](MainWindow& w) { w.setTheme(ThemeChoice::system); }, nullptr,
               [](const MainWindow& w) { return w.theme() == ThemeChoice::system; }, nullptr, true},
    ActionSpec{"view.theme_light", Menu::view, QT_TRANSLATE_NOOP("Actions", "&Light colours"), "",
               Reach::window,
               QT_TRANSLATE_NOOP("Actions", "Dark ink on light paper, for daylight."),
               [](MainWindow& w) { w.setTheme(ThemeChoice::light); }, nullptr,
               [](const MainWindow& w) { return w.theme() == ThemeChoice::light; }},
    ActionSpec{"view.theme_dark", Menu::view, QT_TRANSLATE_NOOP("Actions", "&Dark colours"), "",
               Reach::window,
               QT_TRANSLATE_NOOP("Actions", "Light ink on dark paper, for dim rooms."),
               [](MainWindow& w) { w.setTheme(ThemeChoice::dark); }, nullptr,
               [](const MainWindow& w) { return w.theme() == ThemeChoice::dark; }},
    ActionSpec{"view.menu", Menu::view, QT_TRANSLATE_NOOP("Actions", "Open the &menu"), "F10",
               Reach::window, QT_TRANSLATE_NOOP("Actions", "Opens the menu by key."),
               [](MainWindow& w) { w.openMenu(); }, nullptr, nullptr, nullptr, true},

    ActionSpec{"paper.pdf", Menu::paper, QT_TRANSLATE_NOOP("Actions", "Save as &PDF…"), "Ctrl+E",
               Reach::window,
               QT_TRANSLATE_NOOP("Actions", "Saves the ticked papers as PDF, to send or print."),
               [](MainWindow& w) { w.exportPaper("pdf"); }, hasPaper, nullptr, &kSheet},
    ActionSpec{
        "paper.svg", Menu::paper, QT_TRANSLATE_NOOP("Actions", "Save as &SVG…"), "", Reach::window,
        QT_TRANSLATE_NOOP("Actions", "Saves the ticked papers as drawings, one file a page."),
        [](MainWindow& w) { w.exportPaper("svg"); }, hasPaper},
    ActionSpec{
        "paper.png", Menu::paper, QT_TRANSLATE_NOOP("Actions", "Save as P&NG…"), "", Reach::window,
        QT_TRANSLATE_NOOP("Actions", "Saves the ticked papers as pictures, one file a page."),
        [](MainWindow& w) { w.exportPaper("png"); }, hasPaper},
    ActionSpec{"paper.print", Menu::paper, QT_TRANSLATE_NOOP("Actions", "P&rint…"), "Ctrl+P",
               Reach::window, QT_TRANSLATE_NOOP("Actions", "Prints the ticked papers."),
               [](MainWindow& w) { w.printPaper(); }, hasPaper, nullptr, &kPrinter},
    ActionSpec{"paper.shopping_csv", Menu::paper,
               QT_TRANSLATE_NOOP("Actions", "Shopping list as &CSV…"), "", Reach::window,
               QT_TRANSLATE_NOOP("Actions", "Saves the shopping list for a spreadsheet."),
               [](MainWindow& w) { w.exportShopping(); }, hasStudy},
    ActionSpec{"paper.quote_csv", Menu::paper, QT_TRANSLATE_NOOP("Actions", "&Quote as CSV…"), "",
               Reach::window,
               QT_TRANSLATE_NOOP("Actions", "Saves the lines of the quote for a spreadsheet."),
               [](MainWindow& w) { w.exportQuote(); }, hasStudy},
    // Turning pages is enabled by the paper stage, which knows how many there are.
    ActionSpec{"paper.previous_page", Menu::paper, QT_TRANSLATE_NOOP("Actions", "Pre&vious page"),
               "Ctrl+PgUp", Reach::window, QT_TRANSLATE_NOOP("Actions", "Turns a page back."),
               [](MainWindow& w) { w.turnPage(-1); }, nullptr, nullptr, &kPageLeft, true},
    ActionSpec{"paper.next_page", Menu::paper, QT_TRANSLATE_NOOP("Actions", "Ne&xt page"),
               "Ctrl+PgDown", Reach::window, QT_TRANSLATE_NOOP("Actions", "Turns a page on."),
               [](MainWindow& w) { w.turnPage(+1); }, nullptr, nullptr, &kPageRight},

    ActionSpec{"help.keys", Menu::help, QT_TRANSLATE_NOOP("Actions", "&Keys"), "F1", Reach::window,
               QT_TRANSLATE_NOOP("Actions", "Lists everything that can be done, with its keys."),
               [](MainWindow& w) { w.showKeys(); }},
    ActionSpec{"help.about", Menu::help, QT_TRANSLATE_NOOP("Actions", "&About Sumpwright"), "",
               Reach::window,
               QT_TRANSLATE_NOOP("Actions", "Version, licence, and what the program is not."),
               [](MainWindow& w) { w.showAbout(); }},
};

}  // namespace

std::span<const ActionSpec> actionTable() {
  static const std::vector<ActionSpec> table = [] {
    std::vector<ActionSpec> all(kTable.begin(), kTable.end());
    // What the pointer does stands among the survey, before what turns all of it.
    const auto after = std::find_if(all.begin(), all.end(), [](const ActionSpec& spec) {
      return spec.menu == Menu::whole_plan || spec.menu == Menu::sump;
    });
    const auto tasks = taskActions();
    all.insert(after, tasks.begin(), tasks.end());
    return all;
  }();
  return table;
}

const char* menuTitle(Menu menu) {
  switch (menu) {
    case Menu::file:
      return QT_TRANSLATE_NOOP("Actions", "&File");
    case Menu::edit:
      return QT_TRANSLATE_NOOP("Actions", "&Edit");
    case Menu::survey:
      return QT_TRANSLATE_NOOP("Actions", "S&urvey");
    case Menu::outline:
      return QT_TRANSLATE_NOOP("Actions", "O&utline with the pointer");
    case Menu::lay_opening:
      return QT_TRANSLATE_NOOP("Actions", "Lay an openin&g");
    case Menu::lay_service:
      return QT_TRANSLATE_NOOP("Actions", "Lay a ser&vice");
    case Menu::lay_on_wall:
      return QT_TRANSLATE_NOOP("Actions", "Lay on a &wall");
    case Menu::lay_at_point:
      return QT_TRANSLATE_NOOP("Actions", "Lay at a po&int");
    case Menu::lay_line:
      return QT_TRANSLATE_NOOP("Actions", "Lay a li&ne");
    case Menu::lay_area:
      return QT_TRANSLATE_NOOP("Actions", "Lay an ar&ea");
    case Menu::measure:
      return QT_TRANSLATE_NOOP("Actions", "&Measure");
    case Menu::whole_plan:
      return QT_TRANSLATE_NOOP("Actions", "The whole pl&an");
    case Menu::sump:
      return QT_TRANSLATE_NOOP("Actions", "&Sump");
    case Menu::view:
      return QT_TRANSLATE_NOOP("Actions", "&View");
    case Menu::paper:
      return QT_TRANSLATE_NOOP("Actions", "&Paper");
    case Menu::help:
      break;
  }
  return QT_TRANSLATE_NOOP("Actions", "&Help");
}

std::string keysChapter() {
  std::string out =
      "# Keys\n\n"
      "Made from the window's own table of actions; the window shows the same list under Help, "
      "Keys.\n"
      "Keys marked * count while the plan or the wall tape has the focus (F6 gets there).\n";
  const Menu* before = nullptr;
  for (const ActionSpec& action : actionTable()) {
    const auto plain = [](const char* text) {
      return QString::fromUtf8(text).remove(QLatin1Char('&'));
    };
    if (before == nullptr || *before != action.menu) {
      out += "\n## " + plain(menuTitle(action.menu)).toStdString() +
             "\n\n| action | keys | what it does |\n|---|---|---|\n";
    }
    before = &action.menu;
    QString keys =
        QString::fromLatin1(action.keys).split(QStringLiteral("; ")).join(QStringLiteral(" or "));
    if (!keys.isEmpty() && action.reach == Reach::drawing) keys += QStringLiteral(" *");
    out += "| " + plain(action.text).toStdString() + " | " + keys.toStdString() + " | " +
           action.tip + " |\n";
  }
  return out;
}

}  // namespace sumpwright::window
