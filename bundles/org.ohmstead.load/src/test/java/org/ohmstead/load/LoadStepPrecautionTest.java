// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.model.Amplifier;
import org.ohmstead.model.Bench;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.Cable;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Mounting;
import org.ohmstead.model.Part;
import org.ohmstead.model.PartTraits;
import org.ohmstead.model.PowerKind;
import org.ohmstead.model.Precaution;
import org.ohmstead.model.Project;
import org.ohmstead.model.PulseRule;
import org.ohmstead.model.Rating;
import org.ohmstead.model.SheetSettings;
import org.ohmstead.model.Step;
import org.ohmstead.model.Stimulus;
import org.ohmstead.model.StopLimit;
import org.ohmstead.model.Supply;
import org.ohmstead.model.SupplyType;

class LoadStepPrecautionTest {
    private static final Stimulus SINE = new Stimulus.ContinuousSine(1000);
    private static final Precaution PRECAUTION = new LoadStepPrecaution();

    /** 250 W up to 25 degrees, none at 250; five times that for five seconds. */
    private static Part part(String id) {
        PartTraits traits = PartTraits.NONE.withPulseRule(Optional.of(new PulseRule(5, 5)));
        return new Part(id, 8, 0.01, 250, 25, 250, Mounting.HEAT_SINK, 4, traits);
    }

    private static Project project(double airCelsius, double stepSeconds, LoadBranch... branches) {
        Amplifier amplifier = new Amplifier(
                "Larkspur",
                "L2",
                "",
                2,
                SupplyType.UNREGULATED,
                List.of(),
                List.of(),
                OptionalDouble.empty(),
                List.of(new Rating("r", PowerKind.CONTINUOUS, Mode.STEREO, 4, 2000, 12, 0.01, 1000, "")),
                "");
        Bench bench = new Bench(
                "",
                new Supply("Supply", 0, 16, 100),
                new Cable(25, 4, OptionalDouble.empty()),
                List.of(),
                List.of(part("8R-brief"), new Part("8R", 8, 0.01, 250, 25, 250, Mounting.HEAT_SINK, 4)),
                OptionalDouble.of(airCelsius));
        Project project = new Project(
                "Test",
                amplifier,
                bench,
                List.of(new BenchLoad("load", 4, List.of(branches), 1000)),
                List.of(),
                new SheetSettings("", "", 0.95, ""));
        return project.withHeat(
                project.heat().withPacing(project.heat().pacing().withStepSeconds(stepSeconds)));
    }

    private static Step step(Mode mode, Stimulus stimulus) {
        return new Step("step", mode, "load", 12, stimulus, new EndPoint.ClippingOnset(), false);
    }

    private static LoadBranch branch(String network) {
        return new LoadBranch(4, 0.004, 0, network);
    }

    private static StopLimit limit(Project project, Step step) {
        List<StopLimit> limits = PRECAUTION.stopLimits(project, step);
        assertEquals(1, limits.size());
        assertEquals(StopLimit.Quantity.OUTPUT_WATTS, limits.get(0).quantity());
        assertTrue(limits.get(0).reason().endsWith("."));
        return limits.get(0);
    }

    // Closed form: two equal parts side by side take half each. A derating line from 250 W at 25 degrees to none at 250
    // leaves 250 (250 - 70) / 225 = 200 W at 70. What a maker allows for 5 s as five times the power is, as the same
    // energy, 5 * 5 / 20 = 1.25 times for 20 s and 2.5 times for 10 s; the exponential of the same point allows more
    // (1.69 and 2.78), and the smaller counts; for 100 s none is left. Of the load itself 1000 W are stated, which also
    // stands for parts of which no overload is known.
    @ParameterizedTest
    @CsvSource({
        "'', 25, 20, 1000",
        "8R||8R, 25, 20, 1000",
        "8R-brief||8R-brief, 25, 20, 625",
        "8R-brief||8R-brief, 70, 20, 500",
        "8R-brief||8R-brief, 25, 100, 500",
        "8R-brief||8R-brief, 25, 10, 1000",
        "8R-brief||8R, 25, 20, 625"
    })
    void stopsAtWhatTheWeakestResistorBearsForAsLongAsAStepLasts(
            String network, double airCelsius, double stepSeconds, double watts) {
        Project project = project(airCelsius, stepSeconds, branch(network));
        assertEquals(watts, limit(project, step(Mode.STEREO, SINE)).highest(), 1e-9 * watts);
    }

    @Test
    void ofBurstsTheMeanCountsAsForEver() {
        Stimulus bursts = new Stimulus.ToneBurst(1000, 0.02, 0.5, -20);
        for (String network : List.of("8R-brief||8R-brief", "8R||8R")) {
            StopLimit limit = limit(project(25, 10, branch(network)), step(Mode.STEREO, bursts));
            assertEquals(500, limit.highest(), 1e-9);
            assertTrue(limit.reason().contains("as long as one likes"), limit.reason());
        }
        StopLimit hot = limit(project(70, 10, branch("8R||8R")), step(Mode.STEREO, bursts));
        assertEquals(400, hot.highest(), 1e-9);
    }

    @Test
    void theWeakestBranchOfThoseThatAreDrivenCounts() {
        Project project = project(25, 20, branch(""), branch("8R-brief||8R-brief"));
        StopLimit both = limit(project, step(Mode.STEREO, SINE));
        assertEquals(625, both.highest(), 1e-9);
        assertTrue(both.reason().contains("\"8R-brief\" in the load \"load\""), both.reason());
        assertEquals(1000, limit(project, step(Mode.BRIDGED, SINE)).highest());
    }

    @Test
    void aNetworkThatCannotBeReadOrHasNoRatingLeavesWhatIsStated() {
        for (String network : List.of("8R||", "4R")) {
            Project project = project(25, 20, branch(network));
            assertEquals(1000, limit(project, step(Mode.STEREO, SINE)).highest());
        }
    }

    @Test
    void saysWhatThePrecautionsSayAndNothingOfALoadThatIsNotThere() {
        Project project = project(25, 20, branch("8R||8R"));
        Step step = step(Mode.STEREO, SINE);
        assertEquals(LoadPrecautions.check(project, step, OptionalDouble.empty()), PRECAUTION.check(project, step));
        assertTrue(PRECAUTION.check(project, step).toString().contains("is stated to take 1000 W"));
        assertEquals(List.of(), PRECAUTION.stopLimits(project, step.withLoadId("gone")));
        assertEquals("org.ohmstead.load", PRECAUTION.id());
    }
}
