// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.ohmstead.model.Amplifier;
import org.ohmstead.model.Bench;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.Cable;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.LowestLoad;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Mounting;
import org.ohmstead.model.Part;
import org.ohmstead.model.PartTraits;
import org.ohmstead.model.PowerKind;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.PulseRule;
import org.ohmstead.model.Rating;
import org.ohmstead.model.Severity;
import org.ohmstead.model.SheetSettings;
import org.ohmstead.model.Step;
import org.ohmstead.model.Stimulus;
import org.ohmstead.model.Supply;
import org.ohmstead.model.SupplyType;

class LoadPrecautionsTest {
    private static final OptionalDouble FROM_RATINGS = OptionalDouble.empty();
    private static final PartTraits COOL = PartTraits.NONE.withSinkKelvinPerWatt(OptionalDouble.of(0.05));

    private static Part part(String id, double ohms, int count, PartTraits traits) {
        return new Part(id, ohms, 0.01, 250, 25, 250, Mounting.HEAT_SINK, count, traits);
    }

    private static Project project(List<Part> parts, double nominalOhms, LoadBranch... branches) {
        Amplifier amplifier = new Amplifier(
                "Larkspur",
                "L2",
                "",
                2,
                SupplyType.UNREGULATED,
                List.of(new LowestLoad(Mode.STEREO, 2), new LowestLoad(Mode.BRIDGED, 4)),
                List.of(),
                OptionalDouble.empty(),
                List.of(new Rating("r", PowerKind.CONTINUOUS, Mode.STEREO, 4, 100, 12, 0.01, 1000, "")),
                "");
        Bench bench = new Bench(
                "",
                new Supply("Supply", 0, 16, 100),
                new Cable(25, 4, OptionalDouble.empty()),
                List.of(),
                parts,
                OptionalDouble.of(25));
        return new Project(
                "Test",
                amplifier,
                bench,
                List.of(new BenchLoad("load", nominalOhms, List.of(branches), 1000)),
                List.of(),
                new SheetSettings("", "", 0.95, ""));
    }

    private static Step sine(double frequencyHz) {
        return new Step(
                "step",
                Mode.STEREO,
                "load",
                12,
                new Stimulus.ContinuousSine(frequencyHz),
                new EndPoint.ClippingOnset(),
                false);
    }

    private static LoadBranch branch(double ohms, String network) {
        return new LoadBranch(ohms, 0.004, 0, network);
    }

    private static List<Problem> check(Project project, Step step, OptionalDouble watts) {
        Project planned = project.withPlan(List.of(step));
        List<Problem> problems = LoadPrecautions.check(planned, step, watts);
        for (Problem problem : problems) {
            assertTrue(problem.what().matches("(?s)[A-Z\"].*\\."), problem.what());
            assertTrue(problem.remedy().matches("[A-Z].*\\."), problem.remedy());
            assertTrue(problem.where().startsWith("$."), problem.where());
        }
        return problems;
    }

    private static Problem only(List<Problem> problems) {
        assertEquals(1, problems.size(), problems.toString());
        return problems.get(0);
    }

    @Test
    void hasNothingToSayOfAGoodLoad() {
        Project project =
                project(List.of(part("8R-250W", 8, 4, COOL)), 4, branch(4, "8R||8R"), branch(4.01, "8R-250W||8R-250W"));
        assertEquals(List.of(), check(project, sine(1000), FROM_RATINGS));
    }

    @Test
    void takesThePowerFromTheRatingAndRaisesItWithTheSupply() {
        Project project = project(List.of(), 4, branch(4, ""));
        assertEquals(
                100,
                LoadPrecautions.expectedWatts(
                                project, sine(1000), project.loads().get(0))
                        .orElseThrow());
        Step higher = sine(1000).withSupplyVolts(14.4);
        // Unregulated: with the square of the volts, (14.4 / 12)^2 = 1.44.
        assertEquals(
                144,
                LoadPrecautions.expectedWatts(project, higher, project.loads().get(0))
                        .orElseThrow(),
                1e-9);
        Project held = project.withAmplifier(project.amplifier().withSupplyType(SupplyType.REGULATED));
        assertEquals(
                100,
                LoadPrecautions.expectedWatts(held, higher, held.loads().get(0)).orElseThrow(),
                1e-9);
    }

    @Test
    void namesThePartThatLimitsThePower() {
        Project project = project(List.of(part("8R-250W", 8, 4, COOL)), 4, branch(4, "8R-250W||8R"));
        Problem problem = check(project, sine(1000), OptionalDouble.of(800)).stream()
                .filter(one -> one.severity() == Severity.ERROR)
                .findFirst()
                .orElseThrow();
        assertEquals("$.loads[0].branches[0].network", problem.where());
        // k = 250 / 225 W/K on 0.05 K/W from 25 degrees: 250 / (1 + k 0.05) = 236.84 W each, 473.7 W together.
        assertTrue(problem.what().contains("\"8R-250W\" takes 400 W"), problem.what());
        assertTrue(problem.what().contains("may take 237 W; the load's limit is 474 W"), problem.what());
    }

    @Test
    void saysHowLongAnOverloadLasts() {
        PartTraits pulse = COOL.withPulseRule(Optional.of(new PulseRule(5, 5)));
        Project project = project(List.of(part("4R", 4, 2, pulse)), 4, branch(4, "4R"));
        Problem problem = check(project, sine(1000), OptionalDouble.of(2 * 236.8421)).stream()
                .filter(one -> one.what().contains("From cold"))
                .findFirst()
                .orElseThrow();
        // Twice the power allowed: 12.5 s by constant energy, 15.5 s by the first-order model; the shorter counts.
        assertTrue(problem.what().endsWith("From cold it lasts 12.5 s."), problem.what());
        assertEquals(Severity.WARNING, problem.severity());
    }

    @Test
    void judgesBurstsByTheMeanAndTheirPeak() {
        Project plain = project(List.of(part("4R", 4, 2, COOL)), 4, branch(4, "4R"));
        Step burst = sine(1000).withStimulus(new Stimulus.ToneBurst(1000, 0.02, 0.5, -20));
        // 600 W for 20 ms in 500 ms, 6 W between: mean 29.76 W.
        Problem unknown = only(check(plain, burst, OptionalDouble.of(600)));
        assertEquals(Severity.WARNING, unknown.severity());
        assertTrue(unknown.what().contains("2.53 times"), unknown.what());
        Part ruled = part("4R", 4, 2, COOL.withPulseRule(Optional.of(new PulseRule(5, 5))));
        assertEquals(List.of(), check(project(List.of(ruled), 4, branch(4, "4R")), burst, OptionalDouble.of(600)));
        Part weak = part("4R", 4, 2, COOL.withPulseRule(Optional.of(new PulseRule(2, 0.001))));
        Problem peak = only(check(project(List.of(weak), 4, branch(4, "4R")), burst, OptionalDouble.of(600)));
        assertEquals(Severity.ERROR, peak.severity());
        assertTrue(peak.what().contains("more than its short overload allows"), peak.what());
    }

    @Test
    void warnsOfHotSurfacesAndOfTheStatedLimit() {
        PartTraits warm = PartTraits.NONE
                .withSinkKelvinPerWatt(OptionalDouble.of(0.5))
                .withElementKelvinPerWatt(OptionalDouble.of(0.5))
                .withTemperatureCoefficientPerKelvin(OptionalDouble.of(200e-6));
        List<Problem> problems =
                check(project(List.of(part("4R", 4, 2, warm)), 4, branch(4, "4R")), sine(1000), OptionalDouble.of(100));
        assertEquals(2, problems.size(), problems.toString());
        // 25 + 100 W * 0.5 K/W; the wire is 100 K warmer than the air, 2 %.
        assertTrue(
                problems.get(0).what().contains("reaches 75 degrees"),
                problems.get(0).what());
        assertTrue(
                problems.get(1).what().contains("4.08 ohm instead of 4 ohm"),
                problems.get(1).what());
        Problem implied = only(check(
                project(List.of(part("4R", 4, 2, PartTraits.NONE)), 4, branch(4, "4R")),
                sine(1000),
                OptionalDouble.of(125)));
        // Half of the rated power: halfway from 25 to 250 degrees.
        assertTrue(implied.what().contains("may reach up to 138 degrees"), implied.what());
        Problem stated = only(check(project(List.of(), 4, branch(4, "")), sine(1000), OptionalDouble.of(1200)));
        assertEquals("$.loads[0].powerLimitWatts", stated.where());
    }

    @Test
    void refusesALoadBelowTheLowestUntilItIsConfirmed() {
        Project project = project(List.of(), 1, branch(1, ""));
        Problem refused = check(project, sine(1000), OptionalDouble.of(10)).get(0);
        assertEquals(Severity.ERROR, refused.severity());
        assertEquals("$.plan[0].belowLowestLoadConfirmed", refused.where());
        Step confirmed = sine(1000).withBelowLowestLoadConfirmed(true);
        assertEquals(
                Severity.WARNING,
                only(check(project, confirmed, OptionalDouble.of(10))).severity());
        Problem measured = only(check(project(List.of(), 2, branch(1.8, "")), sine(1000), OptionalDouble.of(10)));
        assertTrue(measured.what().contains("1.8 ohm"), measured.what());
    }

    @Test
    void noticesWrongValues() {
        List<Part> parts = List.of(part("8R2", 8.2, 4, COOL));
        Problem nominal = only(check(project(parts, 8, branch(8.2, "8R2")), sine(1000), OptionalDouble.of(10)));
        assertEquals("$.loads[0].branches[0].network", nominal.where());
        assertTrue(nominal.what().contains("8.2 ohm, with its tolerances 8.118 to 8.282 ohm"), nominal.what());
        Problem measured = only(check(project(parts, 8.2, branch(4.1, "8R2")), sine(1000), OptionalDouble.of(10)));
        assertEquals("$.loads[0].branches[0].ohms", measured.where());
    }

    @Test
    void warnsAboveTheFrequencyUpToWhichTheLoadIsAResistance() {
        // 4 ohm, 10 uH: power down by 1 % at 6398.269 Hz.
        LoadBranch inductive = branch(4, "").withInductanceHenries(10e-6);
        Project project = project(List.of(), 4, inductive);
        assertEquals(List.of(), check(project, sine(6398), OptionalDouble.of(10)));
        Problem problem = only(check(project, sine(6399), OptionalDouble.of(10)));
        assertEquals("$.loads[0].branches[0].inductanceHenries", problem.where());
        assertTrue(problem.what().contains("6400 Hz"), problem.what());
        Part coil = part("4R", 4, 1, COOL.withInductanceHenries(OptionalDouble.of(10e-6)));
        assertEquals(
                Severity.WARNING,
                only(check(project(List.of(coil), 4, branch(4, "4R")), sine(10_000), OptionalDouble.of(10)))
                        .severity());
    }

    @Test
    void countsThePiecesOfAllBranchesTogether() {
        List<Part> parts = List.of(part("8R-250W", 8, 3, COOL));
        Project project = project(parts, 4, branch(4, "8R||8R"), branch(4, "8R||8R"));
        Problem problem = only(check(project, sine(1000), OptionalDouble.of(10)));
        assertEquals("$.loads[0].branches", problem.where());
        assertEquals(
                "The load \"load\" uses 4 pieces of \"8R-250W\" in its 2 branches together, but the bench has 3.",
                problem.what());
        assertEquals(List.of(), check(project, sine(1000).withMode(Mode.SINGLE), OptionalDouble.of(10)));
    }

    @Test
    void pointsAtNetworksThatCannotBeReadAndPartsWithoutARating() {
        List<Part> parts = List.of(part("8R-250W", 8, 3, COOL));
        Problem unknown = only(check(project(parts, 4, branch(4, "8R||8R-260W")), sine(1000), OptionalDouble.of(10)));
        assertEquals(Severity.ERROR, unknown.severity());
        assertEquals("$.loads[0].branches[0].network", unknown.where());
        assertTrue(unknown.what().contains("Character 5: The stock has no part \"8R-260W\"."), unknown.what());
        assertTrue(unknown.remedy().contains("\"8R-250W\""), unknown.remedy());
        Problem unrated = only(check(project(parts, 4, branch(4, "4R")), sine(1000), OptionalDouble.of(10)));
        assertTrue(unrated.what().startsWith("No power rating is known of \"4R\""), unrated.what());
    }

    @Test
    void notesWhenNoPowerOrNoLoadIsKnown() {
        Project project = project(List.of(), 3, branch(3, ""));
        assertEquals(
                Severity.NOTE, only(check(project, sine(1000), FROM_RATINGS)).severity());
        Problem missing = only(check(project, sine(1000).withLoadId("none"), FROM_RATINGS));
        assertEquals("$.plan[0].loadId", missing.where());
    }

    @Test
    void saysOnceWhatIsWrongWithBranchesThatAreAlike() {
        Project alike = project(List.of(), 4, branch(4, "4R"), branch(4, "4R"));
        assertTrue(only(check(alike, sine(1000), OptionalDouble.of(10))).what().contains("in the load \"load\","));
        List<Problem> two =
                check(project(List.of(), 4, branch(4, "4R"), branch(4, "2R+2R")), sine(1000), OptionalDouble.of(10));
        assertEquals(2, two.size());
        assertTrue(
                two.get(1).what().contains("in the load \"load\" (branch 2),"),
                two.get(1).what());
    }

    @Test
    void looksAtTheStock() {
        List<Part> parts = List.of(
                part("8R2", 10.9, 1, PartTraits.NONE),
                part("shunt", 0.01, 1, COOL.withPulseRule(Optional.of(new PulseRule(5, 5))))
                        .withMounting(Mounting.FREE_AIR));
        List<String> where =
                StockProblems.of(parts).stream().map(Problem::where).toList();
        assertEquals(
                List.of(
                        "$.bench.parts[0].sinkKelvinPerWatt",
                        "$.bench.parts[0].pulseRule",
                        "$.bench.parts[1].mounting"),
                where);
        Problem misleading =
                StockProblems.of(List.of(part("8R2", 11, 1, PartTraits.NONE))).get(1);
        assertEquals("$.bench.parts[0].id", misleading.where());
    }

    @Test
    void saysOfAPlanEachThingOnce() {
        Project project = project(List.of(part("4R", 4, 1, COOL)), 4, branch(4, "4R"), branch(4, "4R"));
        Step low = sine(1000);
        Step high = low.withId("high").withSupplyVolts(14.4);
        // 100 W at 12 V are 144 W at 14.4 V by the square of the supply; both steps lack a second piece.
        List<Problem> problems = PlanPrecautions.of(project.withPlan(List.of(low, high)));
        assertEquals(
                1,
                problems.stream()
                        .filter(problem -> problem.where().equals("$.loads[0].branches"))
                        .count());
        assertEquals(
                problems.size(),
                problems.stream().map(Problem::remedy).distinct().count());
    }

    @Test
    void saysOnceThatNoPowerIsKnownAndLeavesOutWhatTheProjectsOwnChecksSay() {
        Project project = project(List.of(part("1R", 1, 2, COOL)), 1, branch(1, "1R"), branch(1, "1R"));
        Step first = sine(1000).withBelowLowestLoadConfirmed(true);
        Step second = first.withId("second");
        Step lost = first.withId("lost").withLoadId("nowhere");
        List<Problem> problems = PlanPrecautions.of(project.withPlan(List.of(first, second, lost)));
        assertEquals(1, problems.size(), problems.toString());
        assertEquals(Severity.NOTE, problems.get(0).severity());
        assertEquals("$.plan[0]", problems.get(0).where());
        assertTrue(
                problems.get(0).what().contains("2 steps, \"step\" the first"),
                problems.get(0).what());
    }
}
