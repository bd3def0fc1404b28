// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.OptionalDouble;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Supply;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.session.LogSnapshot.LogState;

/**
 * What the status line shows of the open project.
 *
 * @param title what the project is called
 * @param folderName name of its folder
 * @param dirty whether there are unsaved edits
 * @param readOnly whether edits are off
 * @param logState whether the test log can be trusted
 * @param logSentence what to tell of it
 * @param ambientCelsius air temperature at the last reading that counts, else the bench's usual one, when either is known
 * @param ambientMeasured whether it is that of the last reading
 * @param supplyName what the supply is
 * @param supplyLowestVolts lowest volts it can be set to
 * @param supplyHighestVolts highest volts it can be set to
 * @param lastSupplyVolts direct volts at the amplifier's terminals at the last reading that counts, when there is one
 */
public record DeskStatus(
        String title,
        String folderName,
        boolean dirty,
        boolean readOnly,
        LogState logState,
        String logSentence,
        OptionalDouble ambientCelsius,
        boolean ambientMeasured,
        String supplyName,
        double supplyLowestVolts,
        double supplyHighestVolts,
        OptionalDouble lastSupplyVolts) {
    public DeskStatus {
        Objects.requireNonNull(title, "title");
        Objects.requireNonNull(folderName, "folderName");
        Objects.requireNonNull(logState, "logState");
        Objects.requireNonNull(logSentence, "logSentence");
        Objects.requireNonNull(ambientCelsius, "ambientCelsius");
        Objects.requireNonNull(supplyName, "supplyName");
        Objects.requireNonNull(lastSupplyVolts, "lastSupplyVolts");
    }

    /** Returns the status of an open project and its log. */
    static DeskStatus of(ProjectSession session, LogSnapshot log) {
        List<Reading> readings = log.validReadings();
        OptionalDouble usual = session.project().bench().ambientCelsius();
        OptionalDouble measured = OptionalDouble.empty();
        OptionalDouble lastSupplyVolts = OptionalDouble.empty();
        if (!readings.isEmpty()) {
            Reading last = readings.get(readings.size() - 1);
            measured = last.conditions().ambientCelsius();
            lastSupplyVolts = OptionalDouble.of(last.weakestChannel().supplyVolts());
        }
        Supply supply = session.project().bench().supply();
        return new DeskStatus(
                session.project().title(),
                String.valueOf(session.folder().getFileName()),
                session.dirty(),
                session.readOnly(),
                log.state(),
                log.sentence(),
                measured.isPresent() ? measured : usual,
                measured.isPresent(),
                supply.name(),
                supply.lowestVolts(),
                supply.highestVolts(),
                lastSupplyVolts);
    }

    /** Returns the status in whole sentences, for a tooltip or a screen reader. */
    public List<String> sentences() {
        List<String> sentences = new ArrayList<>();
        sentences.add("Project \"" + title + "\" in " + folderName + ".");
        sentences.add(editsSentence());
        sentences.add("Test log: " + logSentence + (logSentence.endsWith(".") ? "" : "."));
        ambientCelsius.ifPresent(celsius -> sentences.add(Numbers.format(
                ambientMeasured ? "Air at the last reading: %.1f °C." : "Usual air: %.1f °C.", celsius)));
        sentences.add(
                Numbers.format("%s, %s V to %s V.", supplyName, number(supplyLowestVolts), number(supplyHighestVolts)));
        lastSupplyVolts.ifPresent(
                volts -> sentences.add(Numbers.format("Supply at the amplifier at the last reading: %.2f V.", volts)));
        return List.copyOf(sentences);
    }

    private String editsSentence() {
        if (readOnly) {
            return "Open for reading; edits are off.";
        }
        return dirty ? "There are unsaved edits." : "All edits are saved.";
    }

    private static String number(double value) {
        String pointed = new DecimalFormat("0.###", DecimalFormatSymbols.getInstance(Locale.ROOT)).format(value);
        return Numbers.localised(pointed);
    }
}
