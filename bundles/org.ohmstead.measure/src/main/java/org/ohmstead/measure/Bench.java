// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure;

import java.util.Set;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.Mode;
import org.ohmstead.signal.FrequencyWeighting;
import org.ohmstead.units.text.Messages;

/**
 * A bench that is open: real, replayed or simulated. Used by one thread at a time, except for {@link #standDown}, which any thread may call
 * at any time. A call waits until what it asks for is done; an interrupt ends the wait.
 *
 * <p>What the bench has no ability for nobody asks of it: the engine looks at {@link #abilities} before it calls {@link #connect} and
 * {@link #setSupplyVolts}, and runs no measurement that needs more. Called all the same, it is refused with a
 * {@link MeasurementException}, unless all is so already. Only {@link Feed.Silence} is asked of every bench; one that feeds nothing is
 * silent.
 *
 * <p>Before each run the engine feeds silence, connects the load and sets the supply volts, in this order. A bench that can do both stays
 * open from step to step. One that cannot is set by a person, so the engine opens it anew for every other step, and after it was made
 * safe: that it is opened for a step says that a person has connected that step's load and set its supply volts.
 */
public interface Bench extends AutoCloseable {
    /** Returns what it can do; the same for as long as it is open. */
    Set<Ability> abilities();

    /**
     * Connects a load. The feed is silent before and after. Needs {@link Ability#SELECT_LOAD}.
     *
     * @param mode how the channels meet it
     * @param load which
     */
    void connect(Mode mode, BenchLoad load) throws MeasurementException, InterruptedException;

    /**
     * Sets the volts at the amplifier's terminals, and lets a bench that was made safe feed again. Needs
     * {@link Ability#SET_SUPPLY_VOLTS}.
     *
     * @param supplyVolts direct volts, above 0
     */
    void setSupplyVolts(double supplyVolts) throws MeasurementException, InterruptedException;

    /**
     * Feeds something in, from now on. A level that the bench cannot give is rounded down to the next that it can, never up; a bench that
     * plays recordings takes the nearest that there is. What was really fed {@link Acquisition#input} tells, so a bench whose levels are
     * coarse has {@link Ability#INPUT_WAVEFORM}.
     */
    void feed(Feed feed) throws MeasurementException, InterruptedException;

    /**
     * Records the output.
     *
     * @param seconds for at least how long, above 0
     */
    Acquisition acquire(double seconds) throws MeasurementException, InterruptedException;

    /** Returns what the meters show now. */
    Observation observe() throws MeasurementException, InterruptedException;

    /**
     * Returns the sound level at a place. Needs {@link Ability#SOUND_LEVEL}; a bench without it need not have this method.
     *
     * @param weighting frequency weighting
     * @param position where the microphone is, in a few words, for a person who holds it
     * @param seconds over how long the level is averaged, above 0
     */
    default SoundObservation observeSound(FrequencyWeighting weighting, String position, double seconds)
            throws MeasurementException, InterruptedException {
        throw MeasurementException.of(() -> Messages.of(Bench.class).text("bench.noSound"));
    }

    /**
     * Makes the bench safe at once: the feed falls silent, and where the bench can, the supply is switched off. It does not wait for other
     * calls, and does what it can even if a part of it fails. Until {@link #setSupplyVolts} is called anew nothing is fed; a bench that
     * cannot set them feeds nothing until it is closed and opened anew.
     */
    void standDown() throws MeasurementException;

    /** Makes the bench safe and lets it go. A second call does nothing. */
    @Override
    void close() throws MeasurementException;
}
