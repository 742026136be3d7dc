// What customers say at the counter, against the words the shipped complaints carry. The sentences are
// invented.
#include <algorithm>
#include <map>

#include "app/jobs/complaint_order.hpp"
#include "jobs_support.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

struct Said {
    const char* meant;  // the complaint's id
    const char* sentence;
};

// clang-format off
const std::vector<Said> at_the_counter = {
    {"binds_at_one_place", "There's a tight spot in the middle of the turn"},
    {"binds_at_one_place", "It catches at one spot and then goes on"},
    {"binds_at_one_place", "It snags halfway round and then it's fine"},
    {"binds_at_one_place", "It sticks at one point, then lets go"},
    {"binds_at_one_place", "There's one place where the wheel gets tight every time"},
    {"binds_at_one_place", "There is one patch where it hangs up and then it runs on"},
    {"binds_at_one_place", "Halfway round it fouls on something, always the same place"},
    {"changes_with_trim", "When I trim up she steers off by herself"},
    {"changes_with_trim", "Steering goes funny when I trim the drive out"},
    {"changes_with_trim", "Trim it up and the wheel goes stiff"},
    {"changes_with_trim", "Every time I tilt the engine the steering moves"},
    {"changes_with_trim", "She's lovely with the leg down but tilt it and the wheel gets tight"},
    {"creep", "The wheel creeps round while I hold a steady turn"},
    {"creep", "She drifts off course if I let the wheel sit still"},
    {"creep", "If I hold the wheel against the stop it slowly keeps going round"},
    {"creep", "The engine falls over to one side by itself when we're moored"},
    {"creep", "The helm drifts round on its own while I lean on it"},
    {"drives_not_parallel", "The two engines point different ways"},
    {"drives_not_parallel", "The outboards are toed in, they don't line up any more"},
    {"drives_not_parallel", "One motor points off to the side when the other's straight"},
    {"drives_not_parallel", "The twin outboards aren't parallel"},
    {"drives_not_parallel", "My two outdrives are out of line, one is toed out"},
    {"foam_or_milk", "The oil looks like a milkshake"},
    {"foam_or_milk", "There's froth and bubbles in the reservoir"},
    {"foam_or_milk", "It's all foam when I take the cap off"},
    {"foam_or_milk", "The oil's gone milky"},
    {"foam_or_milk", "The fluid looks like mayonnaise with bubbles in it"},
    {"hard_both_ways", "Stiff as a board both ways"},
    {"hard_both_ways", "The steering has gone heavy, I need both arms"},
    {"hard_both_ways", "Power steering has quit, no help at all"},
    {"hard_both_ways", "It's got really heavy to turn"},
    {"hard_both_ways", "Steering is stiff, my kids can't do it"},
    {"hard_both_ways", "There's no power assist any more"},
    {"hard_both_ways", "groans and it's hard to turn either way"},
    {"hard_both_ways", "It's a struggle in either direction since the pump assistance packed up"},
    {"hard_one_way", "She goes round to port easy enough but it's a fight to get her to starboard"},
    {"hard_one_way", "Tight to starboard since you fitted it"},
    {"hard_one_way", "Turning left is light, turning right takes both hands"},
    {"hard_one_way", "It's stiff one way only"},
    {"hard_one_way", "Easy to the left but I have to haul on it to the right"},
    {"hard_one_way", "My wife can steer it to port but not to starboard, it's too heavy that way"},
    {"hard_one_way", "Effortless to stbd, a wrestle to port"},
    {"hard_one_way", "I need all my weight to get her round to port, the other way is light"},
    {"heavy_when_cold", "In the morning it's like stirring treacle, fine once it warms up"},
    {"heavy_when_cold", "Heavy on a frosty day, fine at noon"},
    {"heavy_when_cold", "It's bad in winter until it has warmed through"},
    {"heavy_when_cold", "First thing in the morning I can hardly turn it"},
    {"heavy_when_cold", "On a chilly morning it's thick like syrup till the sun is up"},
    {"hose_chafe", "A hose is rubbing on the edge of the splashwell"},
    {"hose_chafe", "The hose has worn through its cover and I can see wire"},
    {"hose_chafe", "One of the hoses is worn where it rubs on the bracket"},
    {"hose_chafe", "The hose gets caught when I tilt the engine"},
    {"hose_chafe", "The pipe scrapes on the splash well and it's fraying"},
    {"jerky", "It moves in jerks and jumps"},
    {"jerky", "Steering is notchy and comes in steps"},
    {"jerky", "It goes round in little jerks"},
    {"jerky", "Not smooth at all, kind of ratchety"},
    {"jerky", "The helm judders round in fits and starts"},
    {"kick_back", "The wheel kicks back in my hands over every wave"},
    {"kick_back", "The wheel tugs and snatches when we hit a wake"},
    {"kick_back", "I get a kick through the wheel off every wave"},
    {"kick_back", "The wheel gets yanked out of my hands"},
    {"kick_back", "In a swell the wheel bucks and yanks at my arms"},
    {"locks_solid", "The wheel locked up solid coming into the harbour"},
    {"locks_solid", "It jammed and I could not move it at all"},
    {"locks_solid", "Wheel jammed solid and then it freed itself"},
    {"locks_solid", "It's seized, I can't budge it"},
    {"locks_solid", "It froze rigid, jammed, I couldn't budge the wheel"},
    {"loose_or_clunking", "Something clunks back there in a seaway"},
    {"loose_or_clunking", "There's play, I can rattle the engine by hand"},
    {"loose_or_clunking", "A clonk every time I change from left to right"},
    {"loose_or_clunking", "There's a thump from the stern when I swap direction"},
    {"loose_or_clunking", "The motor's got slop in it, it knocks about"},
    {"loose_or_clunking", "There's backlash, and it clatters when I go astern"},
    {"noise_all_the_time", "The pump whines all the time the engine runs"},
    {"noise_all_the_time", "A constant hum from the steering pump"},
    {"noise_all_the_time", "There's a howl that goes up with the revs"},
    {"noise_all_the_time", "Something whines as soon as the engine is on"},
    {"noise_all_the_time", "Noisy pump, it growls at idle as well"},
    {"noise_all_the_time", "A rumble from the pump that never stops while the motor's on"},
    {"noise_at_full_lock", "It groans when I hold it hard over"},
    {"noise_at_full_lock", "Awful squeal when it's turned all the way at the dock"},
    {"noise_at_full_lock", "Moans at the end of the turn"},
    {"noise_at_full_lock", "It makes a horrible groan when I've got the wheel right over"},
    {"noise_at_full_lock", "Squeals like a pig on full lock"},
    {"noise_at_full_lock", "It roars when the wheel is right over against the stop"},
    {"nothing_moves", "I spin the wheel and nothing happens"},
    {"nothing_moves", "No steering at all, the wheel just goes round"},
    {"nothing_moves", "I turn the wheel and the engine stays put"},
    {"nothing_moves", "We've lost the steering completely"},
    {"nothing_moves", "I turn and there's no response, the outboard stays where it is"},
    {"oil_in_bilge", "There's oil in the bilge and a rainbow when the pump runs"},
    {"oil_in_bilge", "Found a red puddle in the bilge under the hoses"},
    {"oil_in_bilge", "The bilge has oil floating on it"},
    {"oil_in_bilge", "There's a slick around the boat at the mooring"},
    {"oil_in_bilge", "A slick on the bilge water, it looks like ATF"},
    {"oil_lost_unseen", "I keep topping it up but I can't find a leak anywhere"},
    {"oil_lost_unseen", "It uses a pint a month and not a drop on the floor"},
    {"oil_lost_unseen", "I'm adding oil every week and can't see where it goes"},
    {"oil_lost_unseen", "The level keeps falling but everything's dry"},
    {"oil_lost_unseen", "The tank goes down and down but every joint is dry"},
    {"other_wheel_moves", "When I steer from the flybridge the lower wheel turns too"},
    {"other_wheel_moves", "The other wheel spins by itself"},
    {"other_wheel_moves", "The bottom wheel spins when I'm up top"},
    {"other_wheel_moves", "My flybridge wheel turns by itself when he steers below"},
    {"other_wheel_moves", "Steer from up top and the one downstairs goes round as well"},
    {"overflows", "Oil bubbles out of the filler cap on a hot day"},
    {"overflows", "It pukes oil out of the top when it sits in the sun"},
    {"overflows", "The filler spews oil"},
    {"overflows", "The reservoir runs over after an hour's running"},
    {"overflows", "When it gets hot the filler cap spits fluid"},
    {"pilot_does_not_steer", "The autopilot switches on but does not steer"},
    {"pilot_does_not_steer", "Autopilot gives an alarm and the boat does not turn"},
    {"pilot_does_not_steer", "The autopilot's pump runs but nothing happens"},
    {"pilot_does_not_steer", "Pilot won't hold, it just gives an alarm"},
    {"pilot_does_not_steer", "The auto pilot beeps and won't turn the boat"},
    {"pilot_hunts", "The autopilot hunts from side to side"},
    {"pilot_hunts", "The pilot zigzags and never settles"},
    {"pilot_hunts", "On autopilot she snakes about"},
    {"pilot_hunts", "The pilot keeps overshooting the course"},
    {"pilot_hunts", "On auto pilot she swings from side to side and overshoots"},
    {"pulls_under_power", "Pulls to one side as soon as I open the throttle"},
    {"pulls_under_power", "She pulls to starboard under power and I have to lean on the wheel"},
    {"pulls_under_power", "Hit the throttle and it wants to go left"},
    {"pulls_under_power", "I have to hold it against the torque all day"},
    {"pulls_under_power", "Give it the gas and she veers to port"},
    {"short_of_lock", "It won't turn all the way to the left any more"},
    {"short_of_lock", "It stops short of full lock"},
    {"short_of_lock", "It won't go right over to starboard like it used to"},
    {"short_of_lock", "Can't get full lock, needs the whole marina to turn round"},
    {"short_of_lock", "She no longer goes hard over to port, stops well before"},
    {"sides_not_alike", "She turns tighter to port than to starboard"},
    {"sides_not_alike", "More turns to one side than the other"},
    {"sides_not_alike", "Three and a half turns to port and only two and a half to starboard"},
    {"sides_not_alike", "She'll turn on a dime to port but wide to starboard"},
    {"sides_not_alike", "It is lopsided, four turns to port and three to stbd"},
    {"springy_wheel", "The wheel is spongy and comes back at me"},
    {"springy_wheel", "Got to pump the wheel before it bites"},
    {"springy_wheel", "It feels like there's a rubber band in it, mushy"},
    {"springy_wheel", "Wheel feels soft and bounces back"},
    {"springy_wheel", "The steering's gone spongy again"},
    {"springy_wheel", "It's squashy, like a rubber band, and bounces back"},
    {"too_many_turns", "It takes eleven turns now, it used to take six"},
    {"too_many_turns", "I'm winding the wheel for ever to get her round"},
    {"too_many_turns", "I never used to need so many turns to dock"},
    {"too_many_turns", "Wind, wind, wind, and she finally comes round"},
    {"too_many_turns", "I have to wind and wind, twice as many turns as last year"},
    {"turns_wrong_way", "I turn left and she goes right"},
    {"turns_wrong_way", "The steering is backwards"},
    {"turns_wrong_way", "It steers the wrong way since you put the new hoses on"},
    {"turns_wrong_way", "Steering is reversed, port is starboard now"},
    {"turns_wrong_way", "It's back to front, wheel to port and she swings to starboard"},
    {"wander", "She wanders like a drunk, I have to correct all day"},
    {"wander", "Won't hold a straight line above twenty knots"},
    {"wander", "The boat snakes about and the steering feels vague"},
    {"wander", "Can't keep her straight, she's all over the river"},
    {"wander", "Feels loose, I'm sawing at the wheel the whole trip home"},
    {"wander", "She meanders and yaws, I'm chasing the course all day"},
    {"water_at_transom", "There's water coming in where the hoses go through the transom"},
    {"water_at_transom", "The bilge is wet at the transom after you drilled it"},
    {"water_at_transom", "Water gets in by the steering hoses"},
    {"water_at_transom", "The back of the boat takes water where you drilled"},
    {"water_at_transom", "Sea water gets in round the new hose holes in the stern"},
    {"weep_at_block_or_cap", "It leaks from the end cap of the cylinder"},
    {"weep_at_block_or_cap", "Oil is coming from under the valve on top of the ram"},
    {"weep_at_block_or_cap", "The cylinder weeps at its seam, not at the rod"},
    {"weep_at_block_or_cap", "The valve block is wet with oil"},
    {"weep_at_block_or_cap", "The valve on the cylinder is oozing at its face"},
    {"weep_at_fitting", "There's a drip at one of the fittings under the dash"},
    {"weep_at_fitting", "A connection is weeping, I wipe it and it's wet again"},
    {"weep_at_fitting", "The nut on the hose is wet with oil"},
    {"weep_at_fitting", "Found a wet fitting behind the engine"},
    {"weep_at_fitting", "One of the hose ends is dripping a bit"},
    {"weep_at_fitting", "sticky red stuff round a fitting"},
    {"weep_at_fitting", "A union under the console is damp with fluid"},
    {"weep_at_helm_shaft", "Oil runs down the dash behind the wheel"},
    {"weep_at_helm_shaft", "It drips on my feet from behind the steering wheel"},
    {"weep_at_helm_shaft", "There's oil dripping on my shoes from the dash"},
    {"weep_at_helm_shaft", "Oil comes out round the wheel"},
    {"weep_at_helm_shaft", "Fluid trickles down from behind the wheel onto my feet"},
    {"weep_at_rod", "There's oil on the shiny rod of the cylinder"},
    {"weep_at_rod", "The ram is wet and dripping where the rod goes in"},
    {"weep_at_rod", "The cylinder rod is always oily"},
    {"weep_at_rod", "Steering ram is leaking at the seal"},
    {"weep_at_rod", "The chrome bit of the actuator is dripping"},
};
// clang-format on

// 0 for the complaint at the top of the intake page.
std::size_t place_of(const std::string& meant, const std::string& sentence) {
    const auto& complaints = shipped().complaints;
    const std::vector<Index> order = jobs_detail::complaints_nearest_first(shipped(), sentence);
    const auto found = std::find_if(order.begin(), order.end(), [&](Index i) {
        return complaints[static_cast<std::size_t>(i)].id == meant;
    });
    REQUIRE(found != order.end());
    return static_cast<std::size_t>(found - order.begin());
}

}  // namespace

TEST_CASE("A customer's sentence brings the complaint it means to first or second place") {
    std::map<std::string, int> sentences;
    for (const Said& said : at_the_counter) {
        INFO(said.sentence << " -> " << said.meant);
        CHECK(place_of(said.meant, said.sentence) <= 1);
        ++sentences[said.meant];
    }
    for (const Complaint& complaint : shipped().complaints) {
        INFO(complaint.id);
        CHECK(sentences[complaint.id] >= 2);
        CHECK(complaint.words.size() >= 8);
    }
}
