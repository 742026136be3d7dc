// The invented boat "Grey Heron" on its way through the shop.
#include "sample_pages.hpp"

namespace hardover_tests {

using namespace hardover;

namespace {

const CautionText pinch{
    "pinch_ram", "Moving ram and drive",
    "The ram, its bracket and the drive crush fingers when somebody turns the wheel.",
    "Hands out before the wheel moves. Agree on one word, and wait for it to be said back."};
const CautionText injection{
    "injection", "Oil under pressure",
    "A fine jet goes through skin and glove and feels like a pinprick. Without surgery within "
    "hours it can cost the hand.",
    "Never feel for a leak by hand. Hold card or paper to it."};

QuestionText wheel_feel() {
    QuestionText q;
    q.finding = "wheel_feel";
    q.name = "Feel of the wheel";
    q.ask = "Push the wheel to and fro with the drive straight. How does it feel?";
    q.choices = {{"springy", "Springy, it gives and comes back"},
                 {"slack", "Slack, it moves before anything else does"},
                 {"firm", "Firm"}};
    return q;
}

CauseLine cause(const char* id, const char* name, double p, const char* percent) {
    CauseLine line;
    line.id = id;
    line.name = name;
    line.probability = p;
    line.percent = percent;
    return line;
}

JobPage base() {
    JobPage page;
    page.title = "Job 12 · Grey Heron";
    page.words = "Since you fitted it I turn and turn and nothing happens, and on the way home she wanders.";
    page.histories = {{"just_fitted", "Just fitted", true},
                      {"after_other_work", "After other work on the boat"},
                      {"in_service", "In service, nothing done"}};
    page.complaints = {{"hard_one_way", "Hard to steer one way"},
                       {"wander", "Wanders, does not hold a course", true},
                       {"weep_at_fitting", "A fitting weeps oil"},
                       {"noise_at_full_lock", "Noise at full lock"},
                       {"too_many_turns", "Too many turns lock to lock"}};
    page.needs = {{"boat_in_water", "Boat in the water", true},
                  {"second_person", "A second person", true},
                  {"pressure_gauge", "Pressure gauge with the right fitting"}};
    RigLine helm{
        "helm",
        "Helm",
        "How is the boat steered?",
        {{"cable_valve", "Power-assist valve worked by a cable"}, {"manual_pump", "Manual helm pump", true}},
        {},
        "Manual helm pump",
        false};
    RigLine bore{"ram_bore",
                 "Ram bore",
                 "What is the bore of the ram?",
                 {},
                 {"ram_bore", "Ram bore", "in", "", "taken as 1 1/2 in until you say otherwise"},
                 "1 1/2 in",
                 true};
    RigLine stroke{"ram_stroke",
                   "Ram stroke",
                   "How far does the rod travel?",
                   {},
                   {"ram_stroke", "Ram stroke", "in", "9 in", ""},
                   "9 in",
                   false};
    RigLine rams{"rams",
                 "Rams",
                 "How many steering rams?",
                 {},
                 {"rams", "Rams", "count", "", "taken as 2 until you say otherwise"},
                 "2",
                 true};
    helm.matters = bore.matters = true;
    page.rig = {helm, bore, stroke, rams};
    page.causes = {cause("air_in_oil", "Air left in the oil", 0.62, "62 %"),
                   cause("ram_seal", "Worn piston seal in a ram", 0.17, "17 %"),
                   cause("loose_bracket", "Ram bracket works on its bolts", 0.09, "9 %"),
                   cause("helm_check_valve", "Helm check valve not holding", 0.05, "5 %"),
                   cause("hoses_crossed", "Hoses crossed between the rams", 0, "0 %")};
    page.causes[0].weights_for = {
        {"Turns lock to lock: many more than reckoned", "turns_excess", 7.2, "clearly for"},
        {"Wander at speed: a little", "wander_at_speed", 2.1, "a little for"}};
    page.causes[0].weights_against = {
        {"Oil in the reservoir: clear", "reservoir_oil", -1.6, "a little against"}};
    page.causes[1].weights_for = {{"Wheel creeps when held over", "wheel_creep", 5.5, "clearly for"}};
    page.causes[4].state = "ruled out by: both rams move the same way";
    page.not_listed = "Something not on this list: 4 %";
    page.not_listed_probability = 0.04;
    page.several = "More than one fault: 12 %";
    page.plan = {{"Prove: sponge test at the wheel", 5},
                 {"Then: bleed lock to lock", 40},
                 {"If that does not cure it: ram seal test", 20}};
    page.minutes_left = "About 55 min until the boat is right";
    page.answers = {
        {"wander_at_speed", "Wander at speed", "Wanders a little", "told by the customer", true},
        {"turns_counted_port", "Turns counted to port", "5 1/2 turns ± 0.1 turns", "measured", true},
        {"turns_excess", "Turns above reckoned", "0.8 turns: many more", "worked out", false}};
    page.assumptions = {"Ram bore taken as 1 1/2 in (not measured on this boat)", "Rams taken as 2"};
    page.deferrals = {"Torque figures: the maker of the ram decides. His instructions come first."};
    page.trace = {
        "Because the history is just fitted and the turns are above reckoned: air left in the oil is "
        "favoured clearly."};
    using Kind = EventLine::Kind;
    page.events = {{1, "2026-11-25T15:03:13Z", "Opened for Grey Heron: “she wanders all the way home”", true},
                   {2, "2026-11-25T15:04:02Z", "Feel of the wheel: Firm", false},
                   {3, "2026-11-25T15:06:20Z", "Taken back: Feel of the wheel: Firm", true, Kind::took_back,
                    "Feel of the wheel: Firm"},
                   {4, "2026-11-25T15:09:41Z", "Turns counted to port: 5 1/2 turns ± 0.1 turns", true},
                   {5, "2026-11-25T15:12:00Z", "Oil in the reservoir: Foaming", false},
                   {6, "2026-11-25T15:13:30Z", "Taken back: Oil in the reservoir: Foaming", true,
                    Kind::took_back, "Oil in the reservoir: Foaming"}};
    page.also = {"Ram seal test, about 20 min"};
    return page;
}

}  // namespace

JobPage intake_page() {
    JobPage page = base();
    page.phase = "Intake";
    page.card.kind = StepCard::Kind::intake;
    page.card.heading = "What brings the boat in?";
    page.card.why = "The complaint is the way in. Everything else can stay open.";
    for (ChoiceText& complaint : page.complaints) complaint.chosen = false;
    page.answers.clear();
    page.plan.clear();
    page.trace.clear();
    return page;
}

JobPage question_page() {
    JobPage page = base();
    page.phase = "Finding the cause";
    page.card.kind = StepCard::Kind::question;
    page.card.id = "wheel_feel";
    page.card.eyebrow = "Question · about 1 min";
    page.card.heading = "Feel of the wheel";
    page.card.why = "A springy wheel points at air in the oil. A firm one rules it out for the most part.";
    page.card.branches = {"If springy (62 %): Air left in the oil 88 %",
                          "If slack (9 %): Ram bracket works on its bolts 54 %",
                          "If firm (29 %): Worn piston seal in a ram 47 %"};
    page.card.sources = "Source: NAVEDTRA 14105; common practice";
    page.card.questions = {wheel_feel()};
    return page;
}

JobPage check_page() {
    JobPage page = question_page();
    page.card.kind = StepCard::Kind::check;
    page.card.id = "look_at_rams";
    page.card.eyebrow = "Check · about 5 min · light, rag";
    page.card.heading = "Watch the rams while the wheel is turned";
    page.card.why = "Tells a ram that does not move from one that moves the wrong way.";
    page.card.cautions = {pinch, injection};
    page.card.steps = {"Stop the engine and set the drive straight.",
                       "Have a second person turn the wheel slowly to port, a quarter turn at a time.",
                       "Watch both rods and both brackets. Keep your hands away from them.",
                       "Wipe the rods and look for oil."};
    page.card.tools = {"Light", "Rag"};
    QuestionText rams;
    rams.finding = "rams_move";
    rams.name = "Movement of the rams";
    rams.ask = "How do the two rods move?";
    rams.choices = {{"only_port", "Only the one to port"},
                    {"only_starboard", "Only the one to starboard"},
                    {"against", "Against each other"},
                    {"together", "Together, the same way"}};
    QuestionText oil;
    oil.finding = "oil_at_rod";
    oil.name = "Oil at a rod";
    oil.ask = "Is there oil on a rod after wiping it?";
    oil.choices = {{"wet", "Wet again at once"}, {"film", "A thin film", true}, {"dry", "Dry"}};
    oil.answer = "A thin film";
    page.card.questions = {rams, oil};
    return page;
}

JobPage number_page() {
    JobPage page = question_page();
    page.card.kind = StepCard::Kind::check;
    page.card.id = "sponge_test";
    page.card.eyebrow = "Check · about 4 min · tape";
    page.card.heading = "Sponge test at the wheel";
    page.card.why = "Tells air in the oil from slack in the linkage.";
    page.card.cautions = {pinch};
    page.card.steps = {"Turn the wheel hard over until it is solid.",
                       "Pull with about 20 lbf at the rim and mark it against the dash.",
                       "Let go, and measure how far the rim comes back."};
    page.card.tools = {"Tape"};
    QuestionText sponge;
    sponge.finding = "wheel_sponge";
    sponge.name = "Sponge at the rim";
    sponge.ask = "How far does the rim come back?";
    sponge.fields = {{"wheel_sponge", "Sponge at the rim", "in", "", "for example 1 1/2 in ± 1/4 in"}};
    page.card.questions = {sponge};
    return page;
}

JobPage worksheet_page() {
    JobPage page = number_page();
    page.card.id = "count_turns";
    page.card.eyebrow = "Check · about 8 min";
    page.card.heading = "Count the turns from lock to lock";
    page.card.steps = {"Turn to port until the drive meets its stop.",
                       "Count the turns back to starboard lock, by quarters.", "Count them again to port."};
    QuestionText turns;
    turns.finding = "turns_excess";
    turns.name = "Turns above reckoned";
    turns.ask = "Write down what the worksheet needs.";
    turns.fields = {
        {"turns_counted_port", "Turns counted to port", "turns", "5 1/2 turns", ""},
        {"turns_counted_starboard", "Turns counted to starboard", "turns", "", "for example 5 1/2 turns"},
        {"helm_displacement", "Helm displacement", "in^3/turn", "",
         "taken as 1.7 in^3/turn until you say otherwise"}};
    page.card.questions = {turns};
    SheetText sheet;
    sheet.id = "turns_lock_to_lock";
    sheet.name = "Turns lock to lock";
    sheet.inputs = {{"Ram bore", "1 1/2 in", true},
                    {"Ram stroke", "9 in", false},
                    {"Turns counted to port", "5 1/2 turns ± 0.1 turns", false}};
    sheet.results = {{"Turns reckoned", "4.7 turns ± 0.2 turns", false},
                     {"Turns above reckoned", "still needs: turns counted to starboard", false}};
    sheet.advice = {
        "More turns than the volumes give: the oil is squeezed, it slips past a seal, or a figure is wrong."};
    sheet.source = "Source: volumes of a cylinder; common practice";
    page.sheets = {sheet};
    return page;
}

JobPage prove_page() {
    JobPage page = number_page();
    page.phase = "Proving it";
    page.card.kind = StepCard::Kind::prove;
    page.card.cause = "air_in_oil";
    page.card.eyebrow = "Prove it · air left in the oil · about 4 min";
    page.card.questions[0].choices = {
        {"large", "More than 2 in at the rim"}, {"small", "3/4 in to 2 in"}, {"none", "Less than 3/4 in"}};
    return page;
}

JobPage remedy_page() {
    JobPage page = base();
    page.phase = "Putting it right";
    page.causes[0].state = "proved";
    page.card.kind = StepCard::Kind::remedy;
    page.card.id = "bleed_lock_to_lock";
    page.card.cause = "air_in_oil";
    page.card.eyebrow = "Remedy · about 40 min";
    page.card.heading = "Bleed lock to lock";
    page.card.why = "For air left in the oil, proved by the sponge test.";
    page.card.cautions = {injection, pinch};
    page.card.steps = {"Fill the reservoir and keep it filled through all that follows.",
                       "Open the bleeder at the port ram and turn slowly to starboard until clear oil runs.",
                       "Close it, then do the same the other way.", "Go lock to lock ten times and top up."};
    page.card.tools = {"Clear hose", "Spanners", "Rag"};
    page.card.parts = {"Oil as the maker names it, about 1 qt"};
    page.card.figures = {"Bleeder: as the maker's instructions give it",
                         "Reservoir: to the mark, wheel amidships"};
    page.card.after = {"Repeat the sponge test.", "Try the boat at low speed first, both ways."};
    page.card.sources = "Source: TM 5-3805-248-23-1; common practice";
    return page;
}

JobPage after_page() {
    JobPage page = remedy_page();
    page.phase = "Checks after";
    page.card = {};
    page.card.kind = StepCard::Kind::after;
    page.card.cause = "air_in_oil";
    page.card.eyebrow = "Checks after";
    page.card.heading = "Before the boat goes back";
    page.card.after = {"Repeat the sponge test: less than 3/4 in at the rim.",
                       "Look at every fitting you opened: dry after ten minutes at pressure.",
                       "Try the boat, at low speed first, both ways to the lock."};
    return page;
}

JobPage help_page() {
    JobPage page = base();
    page.phase = "Finding the cause";
    page.card.kind = StepCard::Kind::call_for_help;
    page.card.eyebrow = "Call for help";
    page.card.heading = "Nothing on the list is worth trying now";
    page.card.why =
        "Every likely cause has been checked or put right. What is left takes somebody who knows this very "
        "installation.";
    page.card.steps = {"Call the maker of the helm with the list of answers.", "Do not take more apart."};
    return page;
}

JobPage handed_back_page() {
    JobPage page = after_page();
    page.phase = "Handed back";
    page.card = {};
    page.card.kind = StepCard::Kind::handed_back;
    page.card.eyebrow = "Handed back · 25 Nov 2026";
    page.card.heading = "Air left in the oil";
    page.card.why = "Seen and proved. Bled lock to lock; cured.";
    return page;
}

JobPage stopped_page() {
    JobPage page = check_page();
    page.stops = {
        "The boat is not to be run until it steers fully both ways and the cause is found and put right.",
        "The boat is not to be run until the cracked or bent steering part is renewed. It is not welded or "
        "straightened."};
    page.conflict =
        "These answers do not fit together: no cause on the list can show both a firm wheel and foaming oil.";
    return page;
}

namespace {

// One more look before a remedy that the proof already allows.
JobPage once_more_page() {
    JobPage page = check_page();
    page.phase = "Proving it";
    page.card.why +=
        " One more look before the work: is it something other than air left in the oil, worn piston seal in "
        "a ram or ram bracket works on its bolts?";
    return page;
}

// A remedy for what brings the first cause back.
JobPage origin_page() {
    JobPage page = remedy_page();
    page.card.id = "renew_rod_seal";
    page.card.cause = "ram_seal";
    page.card.heading = "Renew the piston seal of the ram";
    page.card.why =
        "For worn piston seal in a ram. This first: left in place, worn piston seal in a ram brings air left "
        "in the oil back.";
    return page;
}

}  // namespace

std::vector<NamedPage> all_sample_pages() {
    return {
        {"intake", intake_page()},       {"question", question_page()},   {"check", check_page()},
        {"number", number_page()},       {"worksheet", worksheet_page()}, {"prove", prove_page()},
        {"once_more", once_more_page()}, {"origin", origin_page()},       {"remedy", remedy_page()},
        {"after", after_page()},         {"help", help_page()},           {"handed_back", handed_back_page()},
        {"stopped", stopped_page()}};
}

QuestionOutlook sample_outlook() {
    const auto move = [](const char* name, double now, double then, bool first) {
        const auto text = [](double p) { return std::to_string(static_cast<int>(100 * p + 0.5)) + " %"; };
        return CauseMove{name, now, then, text(now), text(then), first};
    };
    return {"Feel of the wheel",
            {{"Springy, it gives and comes back",
              0.62,
              "62 %",
              {move("Air left in the oil", 0.62, 0.88, true),
               move("Worn piston seal in a ram", 0.17, 0.05, false),
               move("Ram bracket works on its bolts", 0.09, 0.04, false)}},
             {"Slack, it moves before anything else does",
              0.09,
              "9 %",
              {move("Air left in the oil", 0.62, 0.21, false),
               move("Worn piston seal in a ram", 0.17, 0.14, false),
               move("Ram bracket works on its bolts", 0.09, 0.54, true)}},
             {"Firm",
              0.29,
              "29 %",
              {move("Air left in the oil", 0.62, 0.19, false),
               move("Worn piston seal in a ram", 0.17, 0.47, true),
               move("Ram bracket works on its bolts", 0.09, 0.06, false)}}}};
}

TurningSketch sample_turning() {
    return {
        "Air left in the oil",
        0.62,
        "62 %",
        {{"If feel of the wheel is “Firm”", false, 0.29, "29 %", "Worn piston seal in a ram", 0.47, "47 %"},
         {"If sponge after bleeding is “Comes back” and oil at the fittings is “Dry”", false, 0.08, "8 %",
          "Ram fitted with its ports down", 0.51, "51 %"},
         {"Without the answer about turns counted to port", true, 0, "", "Ram bracket works on its bolts",
          0.33, "33 %"}},
        {}};
}

std::vector<window::LookUpRow> sample_look_up() {
    return {{"effort_one_way", "Effort one way", "Is the wheel heavier one way than the other?", ""},
            {"wander_at_speed", "Wander at speed",
             "At cruising speed in calm water, does the boat hold its course with the wheel held still?",
             "Wanders a little"},
            {"reservoir_oil", "Oil in the reservoir", "How does the oil look?", "Clear"},
            {"wheel_feel", "Feel of the wheel",
             "Push the wheel to and fro with the drive straight. How does it feel?", ""}};
}

window::BenchPage sample_bench() {
    window::BenchPage page;
    page.in_hand = {
        {12, "Job 12", "Grey Heron", "Wanders, does not hold a course", "25 Nov 2026, 15:03 UTC", "3 h ago",
         "Finding the cause",
         "Next: At cruising speed in calm water, does the boat hold its course with the wheel held still?",
         "2026-11-25T15:03:13Z"},
        {11, "Job 11", "Skiff 7 of the invented yard", "Hard to steer one way · Noise at full lock",
         "24 Nov 2026, 09:40 UTC", "yesterday", "Putting it right", "Next: Bleed lock to lock",
         "2026-11-24T09:40:00Z"},
        {9, "Job 9", "Boat without a name", "No complaint noted yet", "23 Nov 2026, 17:12 UTC", "2 days ago",
         "", "", "2026-11-23T17:12:00Z"}};
    page.handed_back = {{10, "Job 10", "Little Auk", "A fitting weeps oil", "22 Nov 2026, 11:01 UTC"}};
    page.knowledge = "12 complaints, 61 findings, 40 causes";
    page.records = "/home/bench/hardover/records.db";
    return page;
}

}  // namespace hardover_tests
