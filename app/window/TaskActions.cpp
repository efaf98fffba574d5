// The actions that say what the pointer does on the plan.

#include <QtGlobal>
#include <array>

#include "window/Actions.h"
#include "window/MainWindow.h"

namespace sumpwright::window {

namespace {

using tools::Task;
using tools::TaskGroup;

bool mayWork(const MainWindow& w) { return w.session().hasJob(); }

/// Takes up a task.
template <Task kTask>
constexpr ActionSpec task(Menu menu, const char* id, const char* text, const char* keys,
                          const char* tip) {
  ActionSpec spec{id,
                  menu,
                  text,
                  keys,
                  Reach::window,
                  tip,
                  [](MainWindow& w) { w.takeTask(kTask); },
                  mayWork,
                  [](const MainWindow& w) { return w.tasks().task() == kTask; }};
  spec.task = kTask;
  return spec;
}

/// Takes up what was taken last of a group.
template <TaskGroup kGroup>
constexpr ActionSpec again(Menu menu, const char* id, const char* text, const char* keys,
                           const char* tip) {
  return {id,     menu, text, keys, Reach::window, tip, [](MainWindow& w) { w.takeTaskOf(kGroup); },
          mayWork};
}

/// Where the tape begins is clicked on the plan; the walls are typed on the outline's page.
constexpr ActionSpec tapeCourtyard() {
  ActionSpec spec = task<Task::tape_courtyard>(
      Menu::outline, "task.tape_courtyard", QT_TRANSLATE_NOOP("Actions", "Courtyard by &tape"), "",
      QT_TRANSLATE_NOOP("Actions",
                        "A courtyard taped wall by wall, from the corner that is clicked."));
  spec.run = [](MainWindow& w) {
    w.survey().showPage(stages::SurveyPage::outline);
    w.takeTask(Task::tape_courtyard);
  };
  return spec;
}

constexpr std::array kTasks{
    task<Task::choose>(Menu::survey, "survey.choose",
                       QT_TRANSLATE_NOOP("Actions", "Choose and &drag"), "Alt+1",
                       QT_TRANSLATE_NOOP("Actions",
                                         "The pointer chooses what is drawn and drags it. Escape "
                                         "on the plan comes back to this.")),
    again<TaskGroup::opening>(
        Menu::lay_opening, "task.opening", QT_TRANSLATE_NOOP("Actions", "Opening as la&st time"),
        "Alt+2", QT_TRANSLATE_NOOP("Actions", "Takes up the kind of opening that was laid last.")),
    task<Task::lay_window>(
        Menu::lay_opening, "task.window", QT_TRANSLATE_NOOP("Actions", "&Window"), "",
        QT_TRANSLATE_NOOP("Actions", "A window: glass that opens, or a fixed pane.")),
    task<Task::lay_door>(Menu::lay_opening, "task.door", QT_TRANSLATE_NOOP("Actions", "&Door"), "",
                         QT_TRANSLATE_NOOP("Actions", "A door without glass, or with little.")),
    task<Task::lay_glazed_door>(Menu::lay_opening, "task.glazed_door",
                                QT_TRANSLATE_NOOP("Actions", "&Glazed door"), "",
                                QT_TRANSLATE_NOOP("Actions", "A door of glass, one leaf or two.")),
    task<Task::lay_garage_door>(Menu::lay_opening, "task.garage_door",
                                QT_TRANSLATE_NOOP("Actions", "G&arage door"), "",
                                QT_TRANSLATE_NOOP("Actions", "A garage door.")),
    task<Task::lay_air_vent>(
        Menu::lay_opening, "task.vent", QT_TRANSLATE_NOOP("Actions", "&Vent"), "",
        QT_TRANSLATE_NOOP("Actions", "An air brick, trickle vent, extract grille or the like.")),
    task<Task::lay_flue_terminal>(
        Menu::lay_opening, "task.flue", QT_TRANSLATE_NOOP("Actions", "&Flue terminal"), "",
        QT_TRANSLATE_NOOP("Actions", "The terminal of a flue in the wall.")),
    task<Task::lay_soffit_vent>(
        Menu::lay_opening, "task.soffit_vent", QT_TRANSLATE_NOOP("Actions", "S&offit vent"), "",
        QT_TRANSLATE_NOOP("Actions", "A vent under the eaves, into the roof.")),
    task<Task::lay_roof_window>(
        Menu::lay_opening, "task.roof_window", QT_TRANSLATE_NOOP("Actions", "&Roof window"), "",
        QT_TRANSLATE_NOOP("Actions", "A window in the slope of the roof above this wall.")),
    again<TaskGroup::service>(
        Menu::lay_service, "task.service", QT_TRANSLATE_NOOP("Actions", "Service as last t&ime"),
        "Alt+3", QT_TRANSLATE_NOOP("Actions", "Takes up the kind of service that was laid last.")),
    task<Task::lay_gas>(Menu::lay_service, "task.gas", QT_TRANSLATE_NOOP("Actions", "&Gas"), "",
                        QT_TRANSLATE_NOOP("Actions", "Where the gas main comes in.")),
    task<Task::lay_electricity>(
        Menu::lay_service, "task.electricity", QT_TRANSLATE_NOOP("Actions", "&Electricity"), "",
        QT_TRANSLATE_NOOP("Actions", "Where the electricity main comes in.")),
    task<Task::lay_telecom>(Menu::lay_service, "task.telecom",
                            QT_TRANSLATE_NOOP("Actions", "&Telecom"), "",
                            QT_TRANSLATE_NOOP("Actions", "Where the telecom line comes in.")),
    task<Task::lay_oil>(Menu::lay_service, "task.oil", QT_TRANSLATE_NOOP("Actions", "&Oil"), "",
                        QT_TRANSLATE_NOOP("Actions", "Where the oil line comes in.")),
    task<Task::lay_water>(Menu::lay_service, "task.water", QT_TRANSLATE_NOOP("Actions", "&Water"),
                          "", QT_TRANSLATE_NOOP("Actions", "Where the water main comes in.")),
    task<Task::lay_drain>(Menu::lay_service, "task.drain", QT_TRANSLATE_NOOP("Actions", "&Drain"),
                          "", QT_TRANSLATE_NOOP("Actions", "Where a drain leaves the house.")),
    task<Task::lay_waste>(Menu::lay_service, "task.waste",
                          QT_TRANSLATE_NOOP("Actions", "Wa&ste pipe"), "",
                          QT_TRANSLATE_NOOP("Actions", "Where a waste pipe leaves the wall.")),
    again<TaskGroup::on_wall>(
        Menu::lay_on_wall, "task.on_wall",
        QT_TRANSLATE_NOOP("Actions", "Thing on a wa&ll as last time"), "Alt+4",
        QT_TRANSLATE_NOOP("Actions", "Takes up what was laid on a wall last.")),
    task<Task::lay_radiator>(
        Menu::lay_on_wall, "task.radiator", QT_TRANSLATE_NOOP("Actions", "&Radiator"), "",
        QT_TRANSLATE_NOOP("Actions", "A radiator on the inside of an outside wall.")),
    task<Task::lay_pier>(Menu::lay_on_wall, "task.pier", QT_TRANSLATE_NOOP("Actions", "&Pier"), "",
                         QT_TRANSLATE_NOOP("Actions", "A pier of the wall, or a buttress.")),
    task<Task::lay_chimney_breast>(Menu::lay_on_wall, "task.chimney_breast",
                                   QT_TRANSLATE_NOOP("Actions", "&Chimney breast"), "",
                                   QT_TRANSLATE_NOOP("Actions", "A chimney breast on the wall.")),
    task<Task::lay_beam_bearing>(Menu::lay_on_wall, "task.beam_bearing",
                                 QT_TRANSLATE_NOOP("Actions", "&Beam bearing"), "",
                                 QT_TRANSLATE_NOOP("Actions", "Where a beam rests on the wall.")),
    task<Task::lay_movement_joint>(
        Menu::lay_on_wall, "task.movement_joint", QT_TRANSLATE_NOOP("Actions", "&Movement joint"),
        "", QT_TRANSLATE_NOOP("Actions", "A joint through the wall from top to bottom.")),
    task<Task::lay_weep_hole>(Menu::lay_on_wall, "task.weep_hole",
                              QT_TRANSLATE_NOOP("Actions", "&Weep hole"), "",
                              QT_TRANSLATE_NOOP("Actions", "A weep hole in the outer leaf.")),
    task<Task::lay_stepped_footing>(
        Menu::lay_on_wall, "task.stepped_footing", QT_TRANSLATE_NOOP("Actions", "&Stepped footing"),
        "", QT_TRANSLATE_NOOP("Actions", "Where the footing steps up or down.")),
    again<TaskGroup::outline>(
        Menu::outline, "task.outline",
        QT_TRANSLATE_NOOP("Actions", "Outline gesture as la&st time"), "Alt+5",
        QT_TRANSLATE_NOOP("Actions", "Takes up what was done to the outline last.")),
    task<Task::lay_house>(
        Menu::outline, "task.house", QT_TRANSLATE_NOOP("Actions", "&Rectangle to begin with"), "",
        QT_TRANSLATE_NOOP("Actions",
                          "The house begins as a rectangle pulled open, or by clicks round it.")),
    task<Task::lay_courtyard>(
        Menu::outline, "task.courtyard", QT_TRANSLATE_NOOP("Actions", "&Courtyard"), "",
        QT_TRANSLATE_NOOP(
            "Actions",
            "A courtyard within the house: a rectangle pulled open, or clicks round it.")),
    tapeCourtyard(),
    task<Task::split_wall>(
        Menu::outline, "task.split", QT_TRANSLATE_NOOP("Actions", "&Split a wall"), "",
        QT_TRANSLATE_NOOP("Actions", "One wall becomes two where it is clicked.")),
    ActionSpec{"task.remove", Menu::outline,
               QT_TRANSLATE_NOOP("Actions", "Take out the ring in &hand"), "", Reach::window,
               QT_TRANSLATE_NOOP("Actions",
                                 "Takes the courtyard of the chosen wall off the plan with all "
                                 "that stands on it; the house itself only when it has none."),
               [](MainWindow& w) { w.removeRing(); },
               [](const MainWindow& w) { return w.mayRemoveRing(); }},
    again<TaskGroup::at_point>(
        Menu::lay_at_point, "task.at_point",
        QT_TRANSLATE_NOOP("Actions", "&Point thing as last time"), "Alt+6",
        QT_TRANSLATE_NOOP("Actions", "Takes up what was laid at a point last.")),
    task<Task::lay_gully>(Menu::lay_at_point, "task.gully", QT_TRANSLATE_NOOP("Actions", "&Gully"),
                          "", QT_TRANSLATE_NOOP("Actions", "A gully: its grating.")),
    task<Task::lay_air_conditioner>(
        Menu::lay_at_point, "task.air_conditioner",
        QT_TRANSLATE_NOOP("Actions", "Air c&onditioner"), "",
        QT_TRANSLATE_NOOP("Actions", "The outdoor unit of an air conditioner or heat pump.")),
    task<Task::lay_socket>(Menu::lay_at_point, "task.socket",
                           QT_TRANSLATE_NOOP("Actions", "&Socket"), "",
                           QT_TRANSLATE_NOOP("Actions", "A socket outlet.")),
    task<Task::lay_fused_spur>(Menu::lay_at_point, "task.fused_spur",
                               QT_TRANSLATE_NOOP("Actions", "&Fused spur"), "",
                               QT_TRANSLATE_NOOP("Actions", "A fused connection unit.")),
    task<Task::lay_consumer_unit>(Menu::lay_at_point, "task.consumer_unit",
                                  QT_TRANSLATE_NOOP("Actions", "Consumer &unit"), "",
                                  QT_TRANSLATE_NOOP("Actions", "The consumer unit or fuse board.")),
    task<Task::lay_sink>(Menu::lay_at_point, "task.sink", QT_TRANSLATE_NOOP("Actions", "S&ink"), "",
                         QT_TRANSLATE_NOOP("Actions", "A kitchen or utility sink.")),
    task<Task::lay_bath>(Menu::lay_at_point, "task.bath", QT_TRANSLATE_NOOP("Actions", "&Bath"), "",
                         QT_TRANSLATE_NOOP("Actions", "A bath.")),
    task<Task::lay_shower>(Menu::lay_at_point, "task.shower",
                           QT_TRANSLATE_NOOP("Actions", "S&hower"), "",
                           QT_TRANSLATE_NOOP("Actions", "A shower tray.")),
    task<Task::lay_wc>(Menu::lay_at_point, "task.wc", QT_TRANSLATE_NOOP("Actions", "&WC"), "",
                       QT_TRANSLATE_NOOP("Actions", "A water closet.")),
    task<Task::lay_basin>(Menu::lay_at_point, "task.basin", QT_TRANSLATE_NOOP("Actions", "Basi&n"),
                          "", QT_TRANSLATE_NOOP("Actions", "A wash basin.")),
    task<Task::lay_appliance>(
        Menu::lay_at_point, "task.appliance", QT_TRANSLATE_NOOP("Actions", "&Appliance"), "",
        QT_TRANSLATE_NOOP("Actions", "A washing machine, boiler or the like.")),
    task<Task::lay_test_hole>(
        Menu::lay_at_point, "task.test_hole", QT_TRANSLATE_NOOP("Actions", "&Test hole"), "",
        QT_TRANSLATE_NOOP("Actions",
                          "Where a small hole is drilled to measure suction under the floor.")),
    task<Task::lay_sump_inside>(
        Menu::lay_at_point, "task.sump_inside", QT_TRANSLATE_NOOP("Actions", "Sump &inside"), "",
        QT_TRANSLATE_NOOP("Actions",
                          "A new sump dug from inside, in a cupboard or the like, where no outside "
                          "wall allows one.")),
    task<Task::lay_standby_sump>(
        Menu::lay_at_point, "task.standby_sump", QT_TRANSLATE_NOOP("Actions", "Stand&by sump"), "",
        QT_TRANSLATE_NOOP("Actions", "The cap or pipe of a standby sump that was found.")),
    again<TaskGroup::line>(
        Menu::lay_line, "task.line", QT_TRANSLATE_NOOP("Actions", "&Line as last time"), "Alt+7",
        QT_TRANSLATE_NOOP("Actions", "Takes up the kind of line that was laid last.")),
    task<Task::run_gas>(Menu::lay_line, "task.run_gas", QT_TRANSLATE_NOOP("Actions", "&Gas run"),
                        "",
                        QT_TRANSLATE_NOOP(
                            "Actions",
                            "The buried run of the gas pipe, from its entry or to a new one.")),
    task<Task::run_electricity>(
        Menu::lay_line, "task.run_electricity", QT_TRANSLATE_NOOP("Actions", "&Electricity run"),
        "",
        QT_TRANSLATE_NOOP(
            "Actions", "The buried run of the electricity cable, from its entry or to a new one.")),
    task<Task::run_telecom>(
        Menu::lay_line, "task.run_telecom", QT_TRANSLATE_NOOP("Actions", "&Telecom run"), "",
        QT_TRANSLATE_NOOP("Actions",
                          "The buried run of the telecom line, from its entry or to a new one.")),
    task<Task::run_oil>(Menu::lay_line, "task.run_oil", QT_TRANSLATE_NOOP("Actions", "&Oil run"),
                        "",
                        QT_TRANSLATE_NOOP(
                            "Actions",
                            "The buried run of the oil line, from its entry or to a new one.")),
    task<Task::run_water>(
        Menu::lay_line, "task.run_water", QT_TRANSLATE_NOOP("Actions", "&Water run"), "",
        QT_TRANSLATE_NOOP("Actions",
                          "The buried run of the water main, from its entry or to a new one.")),
    task<Task::run_drain>(
        Menu::lay_line, "task.run_drain", QT_TRANSLATE_NOOP("Actions", "&Drain run"), "",
        QT_TRANSLATE_NOOP("Actions",
                          "A buried drain, from where it leaves the house or clear of it.")),
    task<Task::run_waste>(Menu::lay_line, "task.run_waste",
                          QT_TRANSLATE_NOOP("Actions", "Wa&ste run"), "",
                          QT_TRANSLATE_NOOP("Actions", "The buried run of a waste pipe.")),
    task<Task::lay_heating_pipe>(
        Menu::lay_line, "task.heating_pipe", QT_TRANSLATE_NOOP("Actions", "&Heating pipe"), "",
        QT_TRANSLATE_NOOP("Actions", "A heating pipe in or on the floor.")),
    task<Task::lay_inner_wall>(Menu::lay_line, "task.inner_wall",
                               QT_TRANSLATE_NOOP("Actions", "&Inner wall"), "",
                               QT_TRANSLATE_NOOP("Actions", "An inner wall, along its middle.")),
    task<Task::lay_rising_wall>(
        Menu::lay_line, "task.rising_wall", QT_TRANSLATE_NOOP("Actions", "&Rising wall"), "",
        QT_TRANSLATE_NOOP(
            "Actions", "A wall under the floor that parts the ground below it, along its middle.")),
    task<Task::lay_gap>(
        Menu::lay_line,
        "task.gap", QT_TRANSLATE_NOOP("Actions", "Ga&p in a rising wall"), "",
        QT_TRANSLATE_NOOP("Actions", "A known gap in a rising wall, by two clicks on it.")),
    task<Task::lay_path>(Menu::lay_line, "task.path", QT_TRANSLATE_NOOP("Actions", "P&ath edge"),
                         "", QT_TRANSLATE_NOOP("Actions", "The edge of a public or shared path.")),
    task<Task::lay_boundary>(Menu::lay_line, "task.boundary",
                             QT_TRANSLATE_NOOP("Actions", "&Boundary"), "",
                             QT_TRANSLATE_NOOP("Actions", "The boundary of the plot.")),
    task<Task::lay_neighbour_opening>(
        Menu::lay_line, "task.neighbour_opening",
        QT_TRANSLATE_NOOP("Actions", "&Neighbour's opening"), "",
        QT_TRANSLATE_NOOP("Actions", "A window or door of the house next door, along its face.")),
    task<Task::lay_overhead_line>(Menu::lay_line, "task.overhead_line",
                                  QT_TRANSLATE_NOOP("Actions", "O&verhead cable"), "",
                                  QT_TRANSLATE_NOOP("Actions", "A cable overhead.")),
    again<TaskGroup::area>(
        Menu::lay_area, "task.area", QT_TRANSLATE_NOOP("Actions", "&Area as last time"), "Alt+8",
        QT_TRANSLATE_NOOP("Actions", "Takes up the kind of area that was laid last.")),
    task<Task::lay_room>(
        Menu::lay_area, "task.room", QT_TRANSLATE_NOOP("Actions", "&Room"), "",
        QT_TRANSLATE_NOOP("Actions",
                          "A room: a rectangle pulled open, or clicks round its inner faces.")),
    task<Task::lay_floor_zone>(Menu::lay_area, "task.floor_zone",
                               QT_TRANSLATE_NOOP("Actions", "&Floor zone"), "",
                               QT_TRANSLATE_NOOP("Actions", "A part of the floor of one kind.")),
    task<Task::lay_chamber>(
        Menu::lay_area, "task.chamber", QT_TRANSLATE_NOOP("Actions", "Inspection &chamber"), "",
        QT_TRANSLATE_NOOP("Actions",
                          "An inspection chamber: its lid, or one click in its middle and Enter.")),
    task<Task::lay_tank>(Menu::lay_area, "task.tank", QT_TRANSLATE_NOOP("Actions", "&Tank"), "",
                         QT_TRANSLATE_NOOP("Actions", "A tank, for oil or the like.")),
    task<Task::lay_septic_tank>(Menu::lay_area, "task.septic_tank",
                                QT_TRANSLATE_NOOP("Actions", "&Septic tank"), "",
                                QT_TRANSLATE_NOOP("Actions", "A septic tank.")),
    task<Task::lay_soakaway>(Menu::lay_area, "task.soakaway",
                             QT_TRANSLATE_NOOP("Actions", "Soaka&way"), "",
                             QT_TRANSLATE_NOOP("Actions", "A soakaway.")),
    task<Task::lay_deck>(Menu::lay_area, "task.deck", QT_TRANSLATE_NOOP("Actions", "&Deck"), "",
                         QT_TRANSLATE_NOOP("Actions", "A deck outside.")),
    task<Task::lay_sitting_place>(
        Menu::lay_area, "task.sitting_place", QT_TRANSLATE_NOOP("Actions", "S&itting place"), "",
        QT_TRANSLATE_NOOP("Actions", "Where people sit outside: no air is blown at it.")),
    task<Task::lay_steps>(Menu::lay_area, "task.steps", QT_TRANSLATE_NOOP("Actions", "Ste&ps"), "",
                          QT_TRANSLATE_NOOP("Actions", "Steps outside.")),
    task<Task::lay_carport>(Menu::lay_area, "task.carport",
                            QT_TRANSLATE_NOOP("Actions", "Carp&ort"), "",
                            QT_TRANSLATE_NOOP("Actions", "A roof over a car, open at its sides.")),
    again<TaskGroup::measure>(
        Menu::measure, "task.measuring", QT_TRANSLATE_NOOP("Actions", "Measuring as last ti&me"),
        "Alt+9",
        QT_TRANSLATE_NOOP("Actions",
                          "Takes up measuring, or pulling out a dimension, as last time.")),
    task<Task::measure>(
        Menu::measure, "task.tape", QT_TRANSLATE_NOOP("Actions", "&Measure"), "",
        QT_TRANSLATE_NOOP("Actions", "A tape between two places; nothing in the job changes.")),
    task<Task::dimension>(
        Menu::measure, "task.dimension", QT_TRANSLATE_NOOP("Actions", "&Dimension line"), "",
        QT_TRANSLATE_NOOP("Actions", "A dimension line that stays tied to what it measures.")),
};

constexpr std::array kGroups{
    TaskGroupSpec{TaskGroup::choose, std::nullopt, paint::Glyph::choose, "survey.choose"},
    TaskGroupSpec{TaskGroup::outline, Menu::outline, paint::Glyph::outline, "task.outline"},
    TaskGroupSpec{TaskGroup::opening, Menu::lay_opening, paint::Glyph::opening, "task.opening"},
    TaskGroupSpec{TaskGroup::service, Menu::lay_service, paint::Glyph::service, "task.service"},
    TaskGroupSpec{TaskGroup::on_wall, Menu::lay_on_wall, paint::Glyph::on_wall, "task.on_wall"},
    TaskGroupSpec{TaskGroup::at_point, Menu::lay_at_point, paint::Glyph::at_point, "task.at_point"},
    TaskGroupSpec{TaskGroup::line, Menu::lay_line, paint::Glyph::line, "task.line"},
    TaskGroupSpec{TaskGroup::area, Menu::lay_area, paint::Glyph::area, "task.area"},
    TaskGroupSpec{TaskGroup::measure, Menu::measure, paint::Glyph::measure, "task.measuring"},
};

}  // namespace

std::span<const ActionSpec> taskActions() { return kTasks; }
std::span<const TaskGroupSpec> taskGroups() { return kGroups; }

}  // namespace sumpwright::window
