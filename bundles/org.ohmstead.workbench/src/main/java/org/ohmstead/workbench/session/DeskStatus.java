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
import org.ohmstead.units.text.Messages;
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
    private static final Messages TEXTS = Messages.of(DeskStatus.class);

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
        sentences.add(TEXTS.text("status.project", title, folderName));
        sentences.add(editsSentence());
        sentences.add(TEXTS.text("status.log", logSentence + (logSentence.endsWith(".") ? "" : ".")));
        ambientCelsius.ifPresent(celsius -> sentences.add(TEXTS.text(
                ambientMeasured ? "status.air.measured" : "status.air.usual", Numbers.format("%.1f", celsius))));
        sentences.add(TEXTS.text("status.supply", supplyName, number(supplyLowestVolts), number(supplyHighestVolts)));
        lastSupplyVolts.ifPresent(
                volts -> sentences.add(TEXTS.text("status.supply.measured", Numbers.format("%.2f", volts))));
        return List.copyOf(sentences);
    }

    private String editsSentence() {
        if (readOnly) {
            return TEXTS.text("status.readOnly");
        }
        return TEXTS.text(dirty ? "status.dirty" : "status.saved");
    }

    private static String number(double value) {
        String pointed = new DecimalFormat("0.###", DecimalFormatSymbols.getInstance(Locale.ROOT)).format(value);
        return Numbers.localised(pointed);
    }
}
