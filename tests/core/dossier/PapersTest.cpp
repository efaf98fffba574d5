#include <algorithm>
#include <cmath>
#include <utility>

#include "core/drawing/Drawn.h"
#include "dossier/Folio.h"
#include "dossier/Papers.h"
#include "dossier/Table.h"
#include "dossier/Wording.h"
#include "price/SealList.h"

namespace sumpwright::dossier {
namespace {

using drawing::furnished;
using drawing::studyOf;
using drawing::voice;

bool papersSay(const Document& document, const std::string& words) {
  return std::any_of(document.pages.begin(), document.pages.end(),
                     [&](const auto& page) { return drawing::says(page, words); });
}

/// A whole text, not a part of one.
bool papersHold(const Document& document, const std::string& words) {
  return std::any_of(document.pages.begin(), document.pages.end(), [&](const auto& page) {
    const auto texts = drawing::textsOf(page);
    return std::find(texts.begin(), texts.end(), words) != texts.end();
  });
}

/// 100 of "1:100" on the first page; 0 without a plan.
int scaleOf(const Document& document) {
  for (const std::string& text : drawing::textsOf(document.pages.front())) {
    if (text.rfind("scale-a4 ", 0) == 0) return std::stoi(text.substr(9));
  }
  return 0;
}

ClientPlanOptions dated() {
  ClientPlanOptions options;
  options.date = "2026-06-02";
  return options;
}

/// The bungalow with a riser whose discharge is placed, and a socket to feed its fan.
plan::Job withRun() {
  plan::Job job = furnished().sump("s", 0, 12.5).job();
  job.design.outlet = plan::OutletMode::riser;
  job.house.eaves_m = 2.6;
  job.design.sumps.front().discharge = plan::Discharge{0, 13.0, 3.4};
  job.design.sumps.front().fan_height_m = 1.2;
  return job;
}

TEST(Papers, AreNamedOnceEach) {
  std::vector<std::string_view> names;
  for (const Paper paper : allPapers()) {
    names.push_back(nameOf(paper));
    EXPECT_EQ(paperNamed(names.back()), paper);
  }
  std::sort(names.begin(), names.end());
  EXPECT_EQ(std::adjacent_find(names.begin(), names.end()), names.end());
  EXPECT_FALSE(paperNamed("nothing"));
}

TEST(Papers, OfAHouseWithoutASumpAreMadeToo) {
  const auto study = studyOf(furnished().job());
  for (const Paper paper : allPapers()) {
    const Document document = paperOf(paper, study, voice(), dated());
    EXPECT_FALSE(document.pages.empty()) << nameOf(paper);
    for (const auto& page : document.pages) drawing::expectInside(page, voice());
  }
}

TEST(Papers, TakeEverySizeOfSheet) {
  const auto study = studyOf(furnished().sump("s", 0, 12.0).job());
  for (const PaperSize size : {PaperSize::a4, PaperSize::a3, PaperSize::letter}) {
    ClientPlanOptions options = dated();
    options.size = size;
    for (const Paper paper : allPapers()) {
      const Document document = paperOf(paper, study, voice(), options);
      // What is read like a letter or filled in by hand is never A3.
      const PaperSize own = size == PaperSize::a3 && !mayLie(paper) ? PaperSize::a4 : size;
      EXPECT_EQ(document.width_mm, sheetSize(own).width_mm);
      for (const auto& page : document.pages) {
        EXPECT_EQ(page.height_mm, sheetSize(own).height_mm);
        drawing::expectInside(page, voice());
      }
    }
  }
}

std::shared_ptr<const Pricing> invented() {
  Pricing pricing;
  pricing.quote.currency = "EUR";
  pricing.quote.date = "2026-06-05";
  price::PricedLine fan;
  fan.item = "fan";
  fan.text = base::plainText("An invented fan");
  fan.quantity = price::Decimal::of(2);
  fan.unit_price = price::Decimal::of(200);
  fan.total = price::Money{40000};
  fan.shown = fan.total;
  pricing.quote.lines = {fan};
  pricing.quote.total = price::Money{40000};
  return std::make_shared<const Pricing>(pricing);
}

TEST(Papers, QuoteAndShoppingListAreOfThePricing) {
  const auto study = studyOf(withRun());
  ClientPlanOptions options = dated();
  EXPECT_TRUE(papersSay(paperOf(Paper::quote, study, voice(), options), "none"));
  options.pricing = invented();
  const Document quote = paperOf(Paper::quote, study, voice(), options);
  EXPECT_FALSE(papersSay(quote, "none"));
  EXPECT_TRUE(papersSay(quote, "400.00"));
  EXPECT_TRUE(papersSay(quote, "2026-06-05"));  // its own day, not that of the others
  const Document shopping = paperOf(Paper::shopping, study, voice(), options);
  EXPECT_TRUE(papersSay(shopping, "An invented fan"));
  EXPECT_FALSE(papersSay(shopping, "400.00"));
}

TEST(Papers, FiguresOfTheSectionStandOnThePageOfItsDrawing) {
  const auto empty = studyOf(furnished().job());
  const auto& runs = empty.runs();
  const auto allowed = std::find_if(runs.begin(), runs.end(), [](const siting::Run& run) {
    return run.ring == 0 && run.state != rules::State::refused;
  });
  ASSERT_NE(allowed, runs.end());
  const double middle = (allowed->from_m + allowed->to_m) / 2.0;
  const auto study = studyOf(furnished().sump("s", 0, middle).job());
  for (const bool landscape : {false, true}) {
    ClientPlanOptions options = dated();
    options.landscape = landscape;
    const Document crew = paperOf(Paper::crew, study, voice(), options);
    int pages = 0;
    for (const auto& page : crew.pages) {
      const bool drawn = drawing::itemsTagged(page, "courses") > 0;
      EXPECT_EQ(drawn, drawing::says(page, "margin slab")) << landscape;
      EXPECT_EQ(drawn, drawing::says(page, "steep_fall")) << landscape;
      pages += drawn ? 1 : 0;
    }
    EXPECT_EQ(pages, 1) << landscape;
  }
}

TEST(Papers, ThePlanOfACrewSheetThatLiesIsNoSmallerThanTheClients) {
  const auto study = studyOf(withRun());
  ClientPlanOptions options = dated();
  options.landscape = true;
  const auto scaleOn = [&](Paper paper) {
    return scaleOf(paperOf(paper, study, voice(), options));
  };
  EXPECT_GT(scaleOn(Paper::plan), 0);
  EXPECT_LE(scaleOn(Paper::crew), scaleOn(Paper::plan));
}

TEST(Papers, LengthsOfAQuoteStandInBothUnitsWhereTheJobIsInFeet) {
  plan::Job job = withRun();
  ClientPlanOptions options = dated();
  Pricing pricing = *invented();
  price::PricedLine cable = pricing.quote.lines.front();
  cable.item = "cable";
  cable.unit = price::PriceUnit::metre;
  cable.quantity = price::Decimal::upToTenth(5.5);
  pricing.quote.lines.push_back(cable);
  options.pricing = std::make_shared<const Pricing>(pricing);
  const auto metric = studyOf(job);
  job.display_units = plan::DisplayUnits::imperial;
  const auto imperial = studyOf(job);
  for (const Paper each : {Paper::quote, Paper::shopping}) {
    EXPECT_TRUE(papersSay(paperOf(each, metric, voice(), options), "metres 5.5"));
    EXPECT_FALSE(papersSay(paperOf(each, metric, voice(), options), "both-units"));
    EXPECT_TRUE(papersSay(paperOf(each, imperial, voice(), options), "both-units"));
  }
}

TEST(Papers, AQuoteWithoutPricesSaysWhyAndTheListStays) {
  const auto study = studyOf(withRun());
  ClientPlanOptions options = dated();
  Pricing pricing = *invented();
  pricing.why_not = {base::Problem{base::Message("prices.not-json"), "", {}}};
  options.pricing = std::make_shared<const Pricing>(pricing);
  const Document quote = paperOf(Paper::quote, study, voice(), options);
  EXPECT_TRUE(papersSay(quote, "not-json"));
  EXPECT_FALSE(papersSay(quote, "400.00"));
  EXPECT_TRUE(papersSay(paperOf(Paper::shopping, study, voice(), options), "An invented fan"));
}

TEST(Papers, ComposedStandInTheOrderTheyAreHandedOver) {
  const auto study = studyOf(furnished().sump("s", 0, 12.0).job());
  const auto options = dated();
  const Document crew = paperOf(Paper::crew, study, voice(), options);
  const Document plan = paperOf(Paper::plan, study, voice(), options);
  const Document both = composed({Paper::crew, Paper::plan}, study, voice(), options);
  ASSERT_EQ(both.pages.size(), crew.pages.size() + plan.pages.size());
  EXPECT_EQ(drawing::toText(both.pages.front()), drawing::toText(plan.pages.front()));
  EXPECT_EQ(drawing::toText(both.pages.back()), drawing::toText(crew.pages.back()));
  EXPECT_EQ(composed({Paper::crew}, study, voice(), options).title, crew.title);
  EXPECT_NE(both.title, plan.title);
  EXPECT_TRUE(composed({}, study, voice(), options).pages.empty());
}

TEST(Run, IsDrawnAndSetOutForTheCrew) {
  const auto study = studyOf(withRun());
  const Document crew = paperOf(Paper::crew, study, voice(), dated());
  for (const char* words : {"outlet", "ground", "fall", "couplers", "supports"}) {
    EXPECT_TRUE(papersSay(crew, words)) << words;
  }
  const auto zones = [](const Document& document) {
    int found = 0;
    for (const auto& page : document.pages) found += drawing::itemsTagged(page, "zone");
    return found;
  };
  EXPECT_GT(zones(crew), 10);
  EXPECT_GT(zones(paperOf(Paper::proposal, study, voice(), dated())), 10);
  EXPECT_EQ(zones(paperOf(Paper::plan, study, voice(), dated())), 0);
}

TEST(Run, SaysWhatIsLaggedOnlyWhereItIsLong) {
  plan::Job job = withRun();
  EXPECT_TRUE(papersSay(paperOf(Paper::crew, studyOf(job), voice(), dated()), "lag "));
  job.design.sumps.front().discharge->height_m = 0.8;
  job.design.sumps.front().discharge->chainage_m = 12.5;
  EXPECT_FALSE(papersSay(paperOf(Paper::crew, studyOf(job), voice(), dated()), "lag "));
}

TEST(Run, FiguresWaitForADischarge) {
  plan::Job job = withRun();
  job.design.sumps.front().discharge.reset();
  const Document crew = paperOf(Paper::crew, studyOf(job), voice(), dated());
  EXPECT_TRUE(papersSay(crew, "figure-unplaced"));
  EXPECT_FALSE(papersSay(crew, "above-hole"));
}

TEST(Run, OfALowOutletAtItsHoleIsNotAskedFor) {
  plan::Job job = withRun();
  job.design.sumps.front().discharge.reset();
  for (const auto mode : {plan::OutletMode::low, plan::OutletMode::riser}) {
    job.design.outlet = mode;
    const auto study = studyOf(job);
    const Document crew = paperOf(Paper::crew, study, voice(), dated());
    const Document client = paperOf(Paper::proposal, study, voice(), dated());
    const bool low = mode == plan::OutletMode::low;
    EXPECT_EQ(papersHold(crew, "low"), low);
    EXPECT_EQ(papersHold(crew, "unplaced"), !low);
    EXPECT_EQ(papersSay(client, "figure-low"), low);
    EXPECT_EQ(papersSay(client, "signature"), low) << "what is settled may be agreed to";
  }
}

TEST(Cable, IsToldPartByPartToTheCrewAndInOneLineToTheClient) {
  const auto study = studyOf(withRun());
  const Document crew = paperOf(Paper::crew, study, voice(), dated());
  for (const char* words : {"sleeve", "drop", "laid", "to-buy", "electrician", "isolator"}) {
    EXPECT_TRUE(papersSay(crew, words)) << words;
  }
  const Document client = paperOf(Paper::proposal, study, voice(), dated());
  EXPECT_TRUE(papersSay(client, "client"));
  EXPECT_FALSE(papersSay(client, "to-buy"));
}

TEST(Cable, ItsHoleIsSetOutForTheCrewAndItsWayDrawn) {
  const auto study = studyOf(withRun());
  const Document crew = paperOf(Paper::crew, study, voice(), dated());
  for (const char* words : {"middle", "-of ", "pipe-", "cable-to"}) {
    EXPECT_TRUE(papersSay(crew, words)) << words;
  }
  int drawn = 0;
  for (const auto& page : crew.pages) drawn += drawing::itemsTagged(page, "cable");
  EXPECT_GT(drawn, 10);
}

TEST(Cable, WithoutASupplySaysSo) {
  plan::Job job = withRun();
  job.plan.supplies.clear();
  EXPECT_TRUE(papersSay(paperOf(Paper::crew, studyOf(job), voice(), dated()), "no-supply"));
  EXPECT_TRUE(papersSay(paperOf(Paper::proposal, studyOf(job), voice(), dated()), "client-none"));
}

/// As far off as no sleeve is drilled, and the sentence says how far that is.
TEST(Cable, SaysWhichEntryItPasses) {
  const auto passes = [](double from_corner_m) {
    plan::Job job = withRun();
    for (plan::Service& service : job.plan.services) {
      if (service.kind == plan::ServiceKind::electricity) {
        service.entry->offset_m = from_corner_m;
      }
    }
    return papersSay(paperOf(Paper::crew, studyOf(job), voice(), dated()),
                     "passes electricity-service 0.30");
  };
  EXPECT_TRUE(passes(1.0));
  EXPECT_FALSE(passes(4.0));  // on the far side of the fan
}

TEST(Seals, CountJointAndEntriesByRoom) {
  const auto study = studyOf(withRun());
  const auto list = price::sealList(study);
  const Document crew = paperOf(Paper::crew, study, voice(), dated());
  EXPECT_GT(list.entries, 0);
  double printed_m = 0.0;  // rounded once, so that what is printed adds up
  for (const auto& room : list.rooms) printed_m += std::round(10.0 * room.joint_m) / 10.0;
  EXPECT_TRUE(papersSay(
      crew, voice().say(base::Message("paper.seal.joint", {base::metres("length", printed_m)}))));
}

TEST(Seals, ARoomWithoutANameIsNotCalledByItsId) {
  plan::Job job = withRun();
  ASSERT_FALSE(job.plan.rooms.empty());
  job.plan.rooms.front().id = "room-x";
  job.plan.rooms.front().name.clear();
  const Document crew = paperOf(Paper::crew, studyOf(job), voice(), dated());
  EXPECT_FALSE(papersSay(crew, "room-x"));
  EXPECT_TRUE(papersSay(crew, "unnamed"));
}

/// Height of the longest upright at the left edge of a page's column.
double longestUpright_mm(const Document& document) {
  double longest = 0.0;
  for (const auto& page : document.pages) {
    for (const auto& item : page.items) {
      const auto* stroke = std::get_if<drawing::Stroke>(&item.shape);
      if (stroke == nullptr || stroke->points.size() != 2) continue;
      const auto& [a, b] = std::pair(stroke->points[0], stroke->points[1]);
      if (std::abs(a.x - b.x) < 1e-9 && std::abs(a.x - kMargin_mm) < 0.1) {
        longest = std::max(longest, std::abs(b.y - a.y));
      }
    }
  }
  return longest;
}

TEST(Commissioning, IsAFormForAHandWithRadonBeforeAndBothSignatures) {
  plan::Job job = withRun();
  job.plan.test_holes.push_back({"hole", "Hall cupboard", {3.0, 3.0}});
  const Document form = paperOf(Paper::commissioning, studyOf(job), voice(), dated());
  for (const char* words : {"before", "re-test", "client", "crew", "signature", "notes"}) {
    EXPECT_TRUE(papersSay(form, words)) << words;
  }
  EXPECT_FALSE(papersSay(form, "predicted"));  // nothing was: no column for it
  EXPECT_LE(form.pages.size(), 2U);
  EXPECT_GE(longestUpright_mm(form), 40.0);  // the notes
}

TEST(Proposal, IsAPaperOfItsOwnInAClientsWordsWithLinesToSign) {
  const auto study = studyOf(withRun());
  const Document paper = paperOf(Paper::proposal, study, voice(), dated());
  const Document plan = paperOf(Paper::plan, study, voice(), dated());
  EXPECT_TRUE(papersSay(paper, "for-nobody"));
  EXPECT_TRUE(papersSay(plan, "for-householder"));
  for (const char* words : {"consent", "signature", "prediction", "asbestos", "services"}) {
    EXPECT_TRUE(papersSay(paper, words)) << words;
  }
  for (const char* words : {"pit-limits", "silica", "memory"}) {
    EXPECT_FALSE(papersSay(paper, words)) << words;
    EXPECT_TRUE(papersSay(plan, words)) << words;
  }
  EXPECT_TRUE(drawing::says(paper.pages.back(), "signature"));
}

TEST(Quote, WhatIsOfferedWithoutAPriceHasNoBoxToTick) {
  ClientPlanOptions options = dated();
  Pricing pricing = *invented();
  price::PricedLine offer = pricing.quote.lines.front();
  offer.item = "scaffold";
  offer.text = base::plainText("An invented scaffold");
  offer.state = price::LineState::optional;
  offer.unit_price.reset();
  offer.total.reset();
  offer.shown.reset();
  pricing.quote.lines.push_back(offer);
  pricing.quote.lines.front().assumed = true;
  pricing.quote.remarks.emplace_back("price.assumed-run");
  options.pricing = std::make_shared<const Pricing>(pricing);
  const Document quote = paperOf(Paper::quote, studyOf(withRun()), voice(), options);
  EXPECT_TRUE(papersSay(quote, "offered-unpriced"));
  EXPECT_FALSE(papersSay(quote, "wanted"));
  EXPECT_FALSE(papersSay(quote, "?"));
  EXPECT_TRUE(papersSay(quote, "about 2"));  // a guessed quantity is marked
  EXPECT_TRUE(papersSay(quote, "assumed-run"));
}

TEST(Margin, WithinTheLinesShowsNoPriceOfOne) {
  const auto study = studyOf(withRun());
  ClientPlanOptions options = dated();
  Pricing pricing = *invented();
  pricing.quote.margin_percent = price::Decimal::of(10);
  pricing.quote.margin = price::Money{4000};
  options.pricing = std::make_shared<const Pricing>(pricing);
  EXPECT_TRUE(papersSay(paperOf(Paper::quote, study, voice(), options), "40.00"));
  pricing.quote.margin_in_lines = true;
  pricing.quote.lines.front().shown = price::Money{44000};
  options.pricing = std::make_shared<const Pricing>(pricing);
  const Document quote = paperOf(Paper::quote, study, voice(), options);
  EXPECT_TRUE(papersSay(quote, "440.00"));
  EXPECT_FALSE(papersSay(quote, "200.00"));
  EXPECT_FALSE(papersSay(quote, "margin"));
}

TEST(Crew, NobodyDrillsWhereItIsRefused) {
  plan::Job job = withRun();
  job.design.sumps.front().chainage_m = 4.4;  // in the front door
  job.design.sumps.front().discharge.reset();
  const auto study = studyOf(job);
  ASSERT_EQ(study.assess({0, 4.4}, "s").state, rules::State::refused);
  const Document crew = paperOf(Paper::crew, study, voice(), dated());
  EXPECT_TRUE(papersSay(crew, "stop-drilling"));
  EXPECT_FALSE(papersSay(crew, "hole-level"));
  int ties = 0;
  for (const auto& page : crew.pages) ties += drawing::itemsTagged(page, "set-out");
  EXPECT_EQ(ties, 0);
  EXPECT_FALSE(
      papersSay(paperOf(Paper::crew, studyOf(withRun()), voice(), dated()), "stop-drilling"));
}

/// In the front door: refused.
plan::Job refused() {
  plan::Job job = withRun();
  job.design.sumps.front().chainage_m = 4.4;
  job.design.sumps.front().discharge.reset();
  return job;
}

/// On the wall, but nobody knows where its riser ends.
plan::Job endsNowhere() {
  plan::Job job = withRun();
  job.design.sumps.front().discharge.reset();
  return job;
}

ClientPlanOptions withPrices() {
  ClientPlanOptions options = dated();
  options.pricing = invented();
  return options;
}

TEST(Open, OfARefusedPlaceNothingIsAskedTheClientNorTold) {
  const auto study = studyOf(refused());
  ClientPlanOptions options = withPrices();
  options.suction = Suction::expected;
  const Document client = paperOf(Paper::proposal, study, voice(), options);
  for (const char* words : {"not-yet", "consent-later", "stopped", "open"}) {
    EXPECT_TRUE(papersSay(client, words)) << words;
  }
  for (const char* words : {"signature", "gauge", "client-none", "not-computed"}) {
    EXPECT_FALSE(papersSay(client, words)) << words;
  }
  const Document quote = paperOf(Paper::quote, study, voice(), withPrices());
  EXPECT_TRUE(papersSay(quote, "title-none"));
  EXPECT_TRUE(papersSay(quote, "stopped"));
  EXPECT_FALSE(papersSay(quote, "400.00"));
}

TEST(Open, ARiserThatEndsNowhereIsToldAndNotSignedFor) {
  const auto study = studyOf(endsNowhere());
  ASSERT_EQ(study.assess({0, 12.5}, "s").state, rules::State::not_proven);
  const Document client = paperOf(Paper::proposal, study, voice(), withPrices());
  EXPECT_TRUE(papersSay(client, "not-yet"));
  EXPECT_TRUE(papersSay(client, "outlet"));
  EXPECT_FALSE(papersSay(client, "signature"));
  const Document quote = paperOf(Paper::quote, study, voice(), withPrices());
  EXPECT_TRUE(papersSay(quote, "400.00"));
  EXPECT_TRUE(papersSay(quote, "open 1"));
  EXPECT_FALSE(papersSay(quote, "accept"));
  const auto settled = studyOf(withRun());
  EXPECT_TRUE(papersSay(paperOf(Paper::proposal, settled, voice(), withPrices()), "signature"));
  EXPECT_TRUE(papersSay(paperOf(Paper::quote, settled, voice(), withPrices()), "accept-"));
}

/// A second sump beside one that may be built.
plan::Job withSecond(double chainage_m) {
  plan::Job job = withRun();
  job.design.sumps.push_back({});
  job.design.sumps.back().id = "s2";
  job.design.sumps.back().chainage_m = chainage_m;
  return job;
}

/// Consent, cost and what to expect are of the whole design, whichever sump the paper shows.
TEST(Open, OfAnotherSumpIsAskedTheClientNothingEither) {
  ClientPlanOptions options = withPrices();
  options.suction = Suction::expected;
  const auto refused_second = studyOf(withSecond(4.4));  // in the front door
  ASSERT_EQ(refused_second.assess({0, 4.4}, "s2").state, rules::State::refused);
  const Document client = paperOf(Paper::proposal, refused_second, voice(), options);
  for (const char* words : {"not-yet", "consent-later", "stopped 2"}) {
    EXPECT_TRUE(papersSay(client, words)) << words;
  }
  for (const char* whole : {"open", "stopped"}) EXPECT_TRUE(papersHold(client, whole)) << whole;
  for (const char* words : {"signature", "not-computed"}) {
    EXPECT_FALSE(papersSay(client, words)) << words;
  }
  const auto open_second = studyOf(withSecond(20.0));  // its riser ends nowhere
  ASSERT_EQ(open_second.assess({0, 20.0}, "s2").state, rules::State::not_proven);
  const Document later = paperOf(Paper::proposal, open_second, voice(), options);
  for (const char* words : {"not-yet", "consent-later", "open 2", "not-computed"}) {
    EXPECT_TRUE(papersSay(later, words)) << words;
  }
  EXPECT_FALSE(papersSay(later, "signature"));
}

TEST(Open, ARiserThatEndsNowhereIsNotDrawnUpTheWall) {
  const auto risers = [](const plan::Job& job) {
    int strokes = 0;
    for (const auto& page : paperOf(Paper::proposal, studyOf(job), voice(), dated()).pages) {
      for (const auto& item : page.items) {
        strokes +=
            item.tag == "riser" && std::holds_alternative<drawing::Stroke>(item.shape) ? 1 : 0;
      }
    }
    return strokes;
  };
  EXPECT_EQ(risers(endsNowhere()), 0);
  EXPECT_GT(risers(withRun()), 0);
}

TEST(Open, OfAStoppedPlaceTheCrewSignsNothingAndSeesItFirst) {
  for (const bool landscape : {false, true}) {
    ClientPlanOptions options = dated();
    options.landscape = landscape;
    const Document crew = paperOf(Paper::crew, studyOf(refused()), voice(), options);
    EXPECT_TRUE(drawing::says(crew.pages.front(), "stop-drilling")) << landscape;
    EXPECT_LE(scaleOf(crew), 200) << landscape;  // and the plan is none the smaller for it
    for (const char* words : {"footing", "holds", "pit-limits"}) {
      EXPECT_FALSE(papersSay(crew, words)) << words;
    }
  }
}

plan::Waiver waiverOf(const plan::Sump& sump) {
  plan::Waiver waiver;
  waiver.id = "w";
  waiver.sump = sump.id;
  waiver.rule = "openings";
  waiver.chainage_m = sump.chainage_m;
  waiver.thing = "kitchen window";
  waiver.reason = "reason-invented";
  waiver.name = "N. Nobody";
  waiver.date = "2026-06-01";
  return waiver;
}

/// Of whichever sump they are.
TEST(Waivers, StandOnEveryPaper) {
  for (const std::size_t of : {std::size_t{0}, std::size_t{1}}) {
    plan::Job job = withSecond(20.0);
    job.design.waivers.push_back(waiverOf(job.design.sumps[of]));
    const auto study = studyOf(job);
    for (const Paper paper : allPapers()) {
      EXPECT_TRUE(papersSay(paperOf(paper, study, voice(), withPrices()), "reason-invented"))
          << nameOf(paper) << " of sump " << of + 1;
    }
  }
}

TEST(Holds, AreThoseOfTheKindOfSump) {
  plan::Job job = withRun();
  job.looked_for.drain = plan::Looked::looked_none;
  std::erase_if(job.plan.services, [](const plan::Service& service) {
    return service.kind == plan::ServiceKind::drain || service.kind == plan::ServiceKind::waste;
  });
  std::erase_if(job.plan.outside, [](const plan::OutsideThing& thing) {
    return thing.kind == plan::OutsideKind::gully ||
           thing.kind == plan::OutsideKind::inspection_chamber;
  });
  const auto crewOf = [](const plan::Job& of) {
    return paperOf(Paper::crew, studyOf(of), voice(), dated());
  };
  EXPECT_FALSE(papersHold(crewOf(job), "drains"));
  EXPECT_TRUE(papersHold(crewOf(job), "core"));
  job.looked_for.drain = plan::Looked::not_looked;
  EXPECT_TRUE(papersHold(crewOf(job), "drains"));
  job.design.sumps.front().kind = plan::SumpKind::standby;
  job.design.sumps.front().at_m = geometry::Point{3.0, 3.0};
  job.design.sumps.front().discharge.reset();
  const Document standby = crewOf(job);
  for (const char* step : {"core", "pit", "footing", "backfill", "drains"}) {
    EXPECT_FALSE(papersHold(standby, step)) << step;
  }
  EXPECT_FALSE(papersSay(standby, "pit-limits"));
  for (const char* words : {"standby", "seal-inside", "standby-untested", "inside-run", "cable"}) {
    EXPECT_TRUE(papersHold(standby, words)) << words;
  }
}

TEST(Commissioning, HasARowForEachFanAndItsUnits) {
  plan::Job job = withRun();
  job.design.sumps.push_back({});
  job.design.sumps.back().id = "s2";
  job.design.sumps.back().chainage_m = 20.0;
  const auto formOf = [](const plan::Job& of) {
    return paperOf(Paper::commissioning, studyOf(of), voice(), dated());
  };
  for (const char* words : {"fan-number 1", "fan-number 2", "pascal", "co-alarm", "hole-built"}) {
    EXPECT_TRUE(papersSay(formOf(job), words)) << words;
  }
  EXPECT_FALSE(papersSay(formOf(job), "2026-06-02"));  // it is filled on another day
  job.design.shared_fan = true;
  EXPECT_FALSE(papersSay(formOf(job), "fan-number"));
}

TEST(Crew, GuessesAreMarkedAndMarginsSaid) {
  plan::Job job = withRun();
  job.house.slab_m.reset();
  job.house.screed_m.reset();
  job.house.footing_top_low_m = -0.9;
  job.house.footing_top_high_m = -0.8;
  const Document crew = paperOf(Paper::crew, studyOf(job), voice(), dated());
  EXPECT_TRUE(papersSay(crew, " ?"));
  EXPECT_TRUE(papersSay(crew, "assumed"));
  EXPECT_TRUE(papersSay(crew, "slab"));
  EXPECT_TRUE(papersSay(crew, "margin"));
}

TEST(ClientPapers, SayWhereTheTrialPitMayStopTheJob) {
  plan::Job job = withRun();
  const auto said = [&](Paper paper) {
    return papersSay(paperOf(paper, studyOf(job), voice(), dated()), "footing-decides");
  };
  job.house.footing_top_low_m = -1.2;
  job.house.footing_top_high_m = -1.1;
  EXPECT_FALSE(said(Paper::proposal));
  job.house.footing_top_high_m = -0.3;  // may stand where the hole goes
  EXPECT_TRUE(said(Paper::plan));
  EXPECT_TRUE(said(Paper::proposal));
  EXPECT_TRUE(said(Paper::crew));
}

TEST(Crew, HeightsAreToldFromTheDatum) {
  plan::Job job = withRun();
  job.house.height_datum = "kitchen sill";
  EXPECT_TRUE(papersSay(paperOf(Paper::crew, studyOf(job), voice(), dated()), "datum-first"));
  job.house.height_datum_m = 1.05;
  const Document crew = paperOf(Paper::crew, studyOf(job), voice(), dated());
  EXPECT_FALSE(papersSay(crew, "datum-first"));
  EXPECT_TRUE(papersSay(crew, "below"));
  EXPECT_TRUE(papersSay(crew, "above 2.35"));  // the outlet at 3.40
  EXPECT_TRUE(papersSay(crew, "above 0.15"));  // the fan at 1.20
}

TEST(Crew, EverySumpHasItsOwnFigures) {
  plan::Job job = withRun();
  job.design.sumps.push_back({});
  job.design.sumps.back().id = "s2";
  job.design.sumps.back().chainage_m = 20.0;
  const auto study = studyOf(job);
  const auto sections = [](const Document& document) {
    int found = 0;
    for (const auto& page : document.pages) found += drawing::itemsTagged(page, "hole") > 0 ? 1 : 0;
    return found;
  };
  const Document both = paperOf(Paper::crew, study, voice(), dated());
  EXPECT_TRUE(papersSay(both, "other 2"));
  EXPECT_TRUE(papersSay(paperOf(Paper::proposal, study, voice(), dated()), "other-sump 2"));
  ClientPlanOptions one = dated();
  one.sump = "s";
  const Document first = paperOf(Paper::crew, study, voice(), one);
  EXPECT_TRUE(papersSay(first, "not-here 2"));
  EXPECT_FALSE(papersSay(first, "other 2"));
  EXPECT_GE(sections(both), sections(first));
}

TEST(Crew, TheFloorsOwnBarrierCounts) {
  plan::Job job = withRun();
  job.house.barrier = plan::Barrier::none;
  for (plan::FloorZone& zone : job.plan.floor_zones) zone.barrier = plan::Barrier::in_floor;
  const Document crew = paperOf(Paper::crew, studyOf(job), voice(), dated());
  EXPECT_TRUE(papersSay(crew, "barrier"));
}

TEST(Seen, FollowsThePlacedDischargeNotTheWord) {
  plan::Job job = withRun();
  job.design.outlet = plan::OutletMode::low;  // but it ends at 3.40
  EXPECT_TRUE(papersSay(paperOf(Paper::crew, studyOf(job), voice(), dated()), "ladder"));
  job.design.outlet = plan::OutletMode::riser;
  job.design.sumps.front().discharge->height_m = 0.5;
  EXPECT_FALSE(papersSay(paperOf(Paper::crew, studyOf(job), voice(), dated()), "ladder "));
}

TEST(Table, ARowTallerThanAPageIsSplitNotLost) {
  const auto study = studyOf(withRun());
  ClientPlanOptions options = dated();
  Pricing pricing = *invented();
  std::string words;
  for (int k = 0; k < 6000; ++k) words += "word" + std::to_string(k) + " ";
  pricing.quote.lines.front().text = base::plainText(words);
  options.pricing = std::make_shared<const Pricing>(pricing);
  const Document quote = paperOf(Paper::quote, study, voice(), options);
  EXPECT_TRUE(papersSay(quote, "word0 "));
  EXPECT_TRUE(papersSay(quote, "word5999"));
  EXPECT_TRUE(papersSay(quote, "400.00"));
  for (const auto& page : quote.pages) drawing::expectInside(page, voice());
}

TEST(Letterhead, PrintsOnlyWhatIsFilled) {
  const auto study = studyOf(furnished().sump("s", 0, 12.0).job());
  ClientPlanOptions options = dated();
  EXPECT_EQ(drawing::itemsTagged(clientPlan(study, voice(), options).pages[0], "letterhead"), 0);
  options.letterhead.firm = "Invented Works";
  options.letterhead.insurer = "Invented Mutual";
  const Document paper = clientPlan(study, voice(), options);
  EXPECT_TRUE(papersSay(paper, "Invented Works"));
  EXPECT_TRUE(papersSay(paper, "Invented Mutual"));
  EXPECT_FALSE(papersSay(paper, "registration"));
  EXPECT_FALSE(papersSay(paper, "electrician"));
}

TEST(Letterhead, TakesLittleHeightOfASheetThatLies) {
  const auto study = studyOf(furnished().sump("s", 0, 12.0).job());
  const Desk desk{voice(), drawing::theme(drawing::ThemeName::paper)};
  Letterhead head;
  head.firm = "Invented Soil Gas Works";
  head.lines = {"4 Made-up Yard", "Nowhere", "000 0000", "post@invented.example"};
  head.insurer = "Invented Mutual";
  EXPECT_LT(heightOf(letterheadRows(desk, head, 184.0)), 13.0);
  const auto scaleOf = [](const Document& paper) {
    for (const drawing::Item& item : paper.pages[0].items) {
      const auto* text = std::get_if<drawing::Text>(&item.shape);
      if (text != nullptr && item.tag == "scale") return text->text;
    }
    return std::string();
  };
  ClientPlanOptions options = dated();
  const std::string upright = scaleOf(clientPlan(study, voice(), options));
  options.landscape = true;
  const std::string bare = scaleOf(clientPlan(study, voice(), options));
  options.letterhead = head;
  const Document paper = clientPlan(study, voice(), options);
  EXPECT_FALSE(bare.empty());
  EXPECT_EQ(scaleOf(paper), bare);  // the head takes nothing of the plan
  EXPECT_EQ(bare, upright);
  for (const std::string& line : head.lines) EXPECT_TRUE(papersSay(paper, line)) << line;
}

TEST(Letterhead, LogoKeepsItsProportions) {
  const auto study = studyOf(furnished().sump("s", 0, 12.0).job());
  ClientPlanOptions options = dated();
  options.letterhead.logo = Logo{"bytes", 400, 100};
  const Document paper = clientPlan(study, voice(), options);
  ASSERT_EQ(paper.pictures.size(), 1U);
  const Picture& picture = paper.pictures[0];
  EXPECT_EQ(picture.page, 0U);
  EXPECT_NEAR(picture.width_mm, 4.0 * picture.height_mm, 1e-9);
  EXPECT_LE(picture.height_mm, 14.0 + 1e-9);
  options.letterhead.logo = Logo{"bytes", 0, 100};
  EXPECT_TRUE(clientPlan(study, voice(), options).pictures.empty());
}

TEST(Suction, IsLeftOutOrSaidToBeMissing) {
  const auto study = studyOf(withRun());
  ClientPlanOptions options = dated();
  EXPECT_FALSE(papersSay(clientPlan(study, voice(), options), "expect"));
  options.suction = Suction::expected;
  EXPECT_TRUE(papersSay(clientPlan(study, voice(), options), "not-computed"));
  auto outlook = std::make_shared<Outlook>();
  outlook->why_not = {base::Problem{base::Message("suction.model.plan"), "", {}}};
  options.outlook = outlook;
  EXPECT_TRUE(papersSay(clientPlan(study, voice(), options), "none"));
}

TEST(Terms, AreTheFirmsWhereItHasAny) {
  const auto study = studyOf(furnished().sump("s", 0, 12.0).job());
  ClientPlanOptions options = dated();
  EXPECT_TRUE(papersSay(proposal(study, voice(), options), "no-level"));
  options.terms = {"Our own invented term."};
  const Document own = proposal(study, voice(), options);
  EXPECT_TRUE(papersSay(own, "Our own invented term."));
  EXPECT_FALSE(papersSay(own, "no-level"));
}

TEST(Suction, MeasuredReadingsAreMarkedMeasured) {
  plan::Job job = furnished().sump("s", 0, 12.0).job();
  job.plan.test_holes.push_back({"hole", "Hall cupboard", {3.0, 3.0}});
  plan::PressureTest test;
  test.id = "t";
  test.date = "2026-05-01";
  test.readings = {{"hole", 3.4, std::nullopt}};
  job.suction.tests = {test};
  ClientPlanOptions options = dated();
  options.suction = Suction::expected;
  const Document paper = clientPlan(studyOf(job), voice(), options);
  EXPECT_TRUE(papersSay(paper, "measured-on"));
  EXPECT_TRUE(papersSay(paper, "Hall cupboard"));
  EXPECT_FALSE(papersSay(paper, "stood"));
  job.suction.tests[0].stood = plan::SumpPlace{0, 3.0, std::nullopt};
  const Document moved = clientPlan(studyOf(job), voice(), options);
  EXPECT_TRUE(papersSay(moved, "stood"));
}

/// As the large figure is printed: 100 x 0.29 is a hair below 29.
TEST(Suction, SharesThatAreToldAlikeAreNotToldApart) {
  const auto study = studyOf(withRun());
  ClientPlanOptions options = dated();
  options.suction = Suction::expected;
  auto outlook = std::make_shared<Outlook>();
  outlook->answer = siting::SuctionAnswer{};
  outlook->answer.middle.emplace_back().reach.floor = 0.29;
  outlook->answer.floor_held = {0.29, 0.29, 0.2900001};
  outlook->answer.likely_floor = 0.2900001;
  outlook->answer.mean_floor = 0.2900001;
  options.outlook = outlook;
  EXPECT_FALSE(papersSay(paperOf(Paper::crew, study, voice(), options), "shares"));
  EXPECT_TRUE(papersSay(paperOf(Paper::plan, study, voice(), options), "band-one"));
  outlook->answer.mean_floor = 0.3;
  EXPECT_TRUE(papersSay(paperOf(Paper::crew, study, voice(), options), "shares 29.00 29.00 30.00"));
}

/// Beside readings only what was predicted for the same sump and flow; without a flow nothing.
TEST(Suction, BesideReadingsStandsWhatWasPredictedForThatTest) {
  plan::Job job = furnished().sump("s", 0, 12.0).job();
  job.plan.test_holes.push_back({"hole", "Hall cupboard", {3.0, 3.0}});
  plan::PressureTest test;
  test.id = "t";
  test.flow_m3_s = 0.012;
  test.readings = {{"hole", 3.4, std::nullopt}};
  job.suction.tests = {test};
  ClientPlanOptions options = dated();
  options.suction = Suction::expected;
  auto outlook = std::make_shared<Outlook>();
  outlook->answer = siting::SuctionAnswer{};
  outlook->answer.state = siting::SuctionState::off_floor;
  options.outlook = outlook;
  const Document without = clientPlan(studyOf(job), voice(), options);
  EXPECT_FALSE(papersSay(without, "43.2"));
  EXPECT_TRUE(papersSay(without, "column-measured"));
  outlook->answer.expected = {{"t", 0.012, {{"hole", 7.8}}}};
  const Document with = clientPlan(studyOf(job), voice(), options);
  EXPECT_TRUE(papersSay(with, "before"));
  EXPECT_TRUE(papersSay(with, "43.2")) << "the flow, m3/h";
  EXPECT_TRUE(papersSay(with, "7.8"));
}

TEST(Table, BreaksNoWordThatAnotherColumnHasRoomFor) {
  const Desk desk{voice(), drawing::theme(drawing::ThemeName::paper)};
  const std::vector<std::vector<Cell>> cells{
      {Cell("ventilation"), Cell("of some words that may be broken anywhere between them")},
      {Cell("overhead-line"), Cell("more")}};
  drawing::DrawList list{100.0, 100.0, {}};
  Sketch sketch(list);
  stack(sketch, tableRows(desk, {{"rule", 0.1}, {"why", 5.0}}, cells, 60.0), {1.0, 1.0});
  EXPECT_TRUE(drawing::says(list, "ventilation"));
  EXPECT_TRUE(drawing::says(list, "overhead-line"));
  drawing::expectInside(list, voice());
}

TEST(Wording, BreaksNoQuantity) {
  const Desk desk{voice(), drawing::theme(drawing::ThemeName::paper)};
  for (const std::string whole : {"7.9 m", "25' 11\"", "88' 10 7/8\"", "\u2248 370 Pa", "(27.1 m)",
                                  "0.482 in. w.c.", "35 dB(A)", "1.5 hours"}) {
    const std::string words = "so many words and " + whole + ", then more of them";
    for (double width_mm = 26.0; width_mm < 70.0; width_mm += 0.5) {
      std::string joined;
      bool held = false;
      for (const std::string& line : wrapped(desk, words, fonts::body, width_mm)) {
        held = held || line.find(whole) != std::string::npos;
        joined += (joined.empty() ? "" : " ") + line;
      }
      EXPECT_TRUE(held) << whole << " at " << width_mm;
      EXPECT_EQ(joined, words);  // nothing is lost, and no hard space is left
    }
  }
}

TEST(Table, RepeatsItsHeadAndKeepsToItsWidth) {
  const auto study = studyOf(furnished().sump("s", 0, 12.0).job());
  const ClientPlanOptions options = dated();
  const Sheet sheet(study, voice(), options);
  Folio folio(sheet, "Title", "for whom");
  std::vector<std::vector<Cell>> cells(90, {Cell("a"), Cell("words that wrap in their cell")});
  folio.add(tableRows(folio.desk(), {{"first head", 1.0}, {"second head", 1.0}}, cells,
                      folio.width_mm(), {6.0, true}));
  const Document document = folio.finished();
  ASSERT_GE(document.pages.size(), 3U);
  for (const auto& page : document.pages) {
    EXPECT_TRUE(drawing::says(page, "first head"));
    drawing::expectInside(page, voice());
  }
}

}  // namespace
}  // namespace sumpwright::dossier
