// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.testkit.internal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.ohmstead.measure.Ability;
import org.ohmstead.measure.Acquisition;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.Feed;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.Observation;
import org.ohmstead.measure.SoundObservation;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.Mode;
import org.ohmstead.signal.FrequencyWeighting;

/** A bench that can no more than a measurement says it needs, and remembers what it was asked for beyond that. */
public final class LimitedBench extends PassingBench {
    private final Set<Ability> abilities;
    private final List<String> beyond = Collections.synchronizedList(new ArrayList<>());

    public LimitedBench(Bench bench, Set<Ability> abilities) {
        super(bench);
        this.abilities = Set.copyOf(abilities);
    }

    public List<String> beyond() {
        return List.copyOf(beyond);
    }

    @Override
    public Set<Ability> abilities() {
        EnumSet<Ability> both = EnumSet.copyOf(super.abilities());
        both.retainAll(abilities);
        return both;
    }

    private void need(Ability ability) throws MeasurementException {
        if (!abilities.contains(ability)) {
            beyond.add(ability.words());
            throw new MeasurementException(
                    "The bench cannot " + ability.words() + ". Name the ability in the information.");
        }
    }

    @Override
    public void connect(Mode mode, BenchLoad load) throws MeasurementException, InterruptedException {
        need(Ability.SELECT_LOAD);
        super.connect(mode, load);
    }

    @Override
    public void setSupplyVolts(double supplyVolts) throws MeasurementException, InterruptedException {
        need(Ability.SET_SUPPLY_VOLTS);
        super.setSupplyVolts(supplyVolts);
    }

    @Override
    public void feed(Feed feed) throws MeasurementException, InterruptedException {
        if (feed instanceof Feed.Tone tone) {
            need(Ability.TONE);
            if (tone.channel().isPresent()) {
                need(Ability.SINGLE_CHANNEL);
            }
        } else if (feed instanceof Feed.Burst) {
            need(Ability.TONE_BURST);
        }
        super.feed(feed);
    }

    @Override
    public Acquisition acquire(double seconds) throws MeasurementException, InterruptedException {
        need(Ability.WAVEFORM);
        Acquisition all = super.acquire(seconds);
        return new Acquisition(
                all.output(),
                abilities.contains(Ability.INPUT_WAVEFORM) ? all.input() : Optional.empty(),
                all.voltsPerFullScale(),
                seen(all.during()));
    }

    @Override
    public Observation observe() throws MeasurementException, InterruptedException {
        if (Arrays.stream(Ability.values()).filter(Meters::isMeter).noneMatch(abilities::contains)) {
            beyond.add("read any meter");
        }
        return seen(super.observe());
    }

    @Override
    public SoundObservation observeSound(FrequencyWeighting weighting, String position, double seconds)
            throws MeasurementException, InterruptedException {
        need(Ability.SOUND_LEVEL);
        return super.observeSound(weighting, position, seconds);
    }

    private Observation seen(Observation all) {
        return new Observation(
                all.at(),
                only(Ability.SUPPLY_VOLTS, all.supplyVolts()),
                only(Ability.SUPPLY_AMPS, all.supplyAmps()),
                only(Ability.CASE_CELSIUS, all.caseCelsius()),
                only(Ability.AMBIENT_CELSIUS, all.ambientCelsius()));
    }

    private OptionalDouble only(Ability ability, OptionalDouble value) {
        return abilities.contains(ability) ? value : OptionalDouble.empty();
    }
}
