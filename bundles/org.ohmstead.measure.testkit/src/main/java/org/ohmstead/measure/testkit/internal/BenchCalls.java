// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.testkit.internal;

import java.util.OptionalInt;
import org.ohmstead.measure.Ability;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.Feed;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.Subject;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.Mode;
import org.ohmstead.signal.FrequencyWeighting;

/** Each ability as a call of a bench, and how loud a recording is. */
public final class BenchCalls {
    private static final double BURST_ON_SECONDS = 0.02;
    private static final double BURST_PERIOD_SECONDS = 0.1;
    private static final double BURST_LOW_DB = -20;
    private static final String OTHER_LOAD = "thereIsNoSuchLoad";

    private final Subject subject;
    private final double driveDb;
    private final double seconds;

    /** Makes calls that feed the step's frequency at a level and record for a while. */
    public BenchCalls(Subject subject, double driveDb, double seconds) {
        this.subject = subject;
        this.driveDb = driveDb;
        this.seconds = seconds;
    }

    public Feed.Tone tone() {
        return Feed.Tone.of(subject.step().stimulus().frequencyHz(), driveDb);
    }

    /** Uses an ability; a meter is no call of its own. */
    public void use(Bench bench, Ability ability) throws MeasurementException, InterruptedException {
        switch (ability) {
            case TONE -> bench.feed(tone());
            case SINGLE_CHANNEL -> bench.feed(new Feed.Tone(tone().frequencyHz(), driveDb, OptionalInt.of(0)));
            case TONE_BURST ->
                bench.feed(new Feed.Burst(
                        tone().frequencyHz(), driveDb, BURST_ON_SECONDS, BURST_PERIOD_SECONDS, BURST_LOW_DB));
            case WAVEFORM, INPUT_WAVEFORM -> bench.acquire(seconds);
            case SET_SUPPLY_VOLTS -> bench.setSupplyVolts(subject.step().supplyVolts());
            case SELECT_LOAD -> bench.connect(subject.step().mode(), subject.load());
            case CUT_SUPPLY -> bench.standDown();
            case SOUND_LEVEL -> bench.observeSound(FrequencyWeighting.C, "at the listener's head", seconds);
            default -> bench.observe();
        }
    }

    /** Asks for something that is not so already, to a bench that cannot do it. */
    public void demand(Bench bench, Ability ability) throws MeasurementException, InterruptedException {
        if (ability == Ability.SELECT_LOAD) {
            BenchLoad other = subject.load()
                    .withId(OTHER_LOAD)
                    .withNominalOhms(2 * subject.load().nominalOhms());
            bench.connect(subject.step().mode() == Mode.SINGLE ? Mode.STEREO : Mode.SINGLE, other);
        } else if (ability == Ability.SET_SUPPLY_VOLTS) {
            bench.setSupplyVolts(subject.step().supplyVolts() / 2);
        } else {
            use(bench, ability);
        }
    }
}
