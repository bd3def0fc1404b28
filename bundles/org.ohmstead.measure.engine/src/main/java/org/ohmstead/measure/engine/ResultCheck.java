// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.ohmstead.measure.Figure;
import org.ohmstead.measure.FigureInfo;
import org.ohmstead.measure.Measurement;
import org.ohmstead.measure.MeasurementInfo;
import org.ohmstead.measure.MeasurementResult;
import org.ohmstead.measure.Subject;
import org.ohmstead.model.CaptureUsed;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Step;
import org.ohmstead.model.SweepPoint;
import org.ohmstead.units.text.Said;

/** Whether a result is what the measurement said it would give. */
final class ResultCheck {
    private static final int MOST_FIGURES = 10_000;
    private static final int MOST_NOTES = 100;
    private static final int LONGEST_NOTE = 2000;

    private final Plugin<Measurement, MeasurementInfo> measurement;
    private final Subject subject;
    private final List<KeptCapture> kept;

    ResultCheck(Plugin<Measurement, MeasurementInfo> measurement, Subject subject, List<KeptCapture> kept) {
        this.measurement = measurement;
        this.subject = subject;
        this.kept = kept;
    }

    /** Returns what is wrong, a whole sentence; empty when nothing is. */
    Optional<Said> fault(MeasurementResult result) {
        if (result == null) {
            return said("result.none");
        }
        if (result.figures().size() > MOST_FIGURES || result.notes().size() > MOST_NOTES) {
            return said("result.many", result.figures().size(), result.notes().size(), MOST_FIGURES, MOST_NOTES);
        }
        if (result.notes().stream().anyMatch(note -> note.length() > LONGEST_NOTE)) {
            return said("result.longNote", LONGEST_NOTE);
        }
        Map<String, FigureInfo> known =
                measurement.info().figures().stream().collect(Collectors.toMap(FigureInfo::id, Function.identity()));
        Set<List<String>> seen = new HashSet<>();
        for (Figure figure : result.figures()) {
            Optional<Said> fault = fault(figure, Optional.ofNullable(known.get(figure.id())));
            if (fault.isPresent()) {
                return fault;
            }
            if (!seen.add(List.of(figure.id(), figure.channel(), figure.at()))) {
                return said("result.twice", figure.id());
            }
        }
        return result.power().flatMap(this::fault);
    }

    private Optional<Said> fault(Figure figure, Optional<FigureInfo> known) {
        if (known.isEmpty()) {
            return said("result.unannounced", figure.id());
        }
        if (figure.unit() != known.get().unit()) {
            return said(
                    "result.unit",
                    figure.id(),
                    figure.unit().symbol(),
                    known.get().unit().symbol());
        }
        if (known.get().perChannel() && figure.channel().isBlank()) {
            return said("result.noChannel", figure.id());
        }
        return Optional.empty();
    }

    private Optional<Said> fault(Reading reading) {
        Step step = subject.step();
        if (!reading.stepId().equals(step.id())
                || reading.mode() != step.mode()
                || !reading.loadId().equals(step.loadId())) {
            return said("result.otherStep", reading.stepId(), step.id());
        }
        Set<String> there = kept.stream()
                .flatMap(each -> Stream.of(each.contentSha256(), each.used().sha256()))
                .collect(Collectors.toSet());
        Stream<String> named = Stream.concat(
                reading.provenance().captures().stream().map(CaptureUsed::sha256),
                reading.channels().stream()
                        .flatMap(channel -> channel.sweep().stream())
                        .map(SweepPoint::captureSha256));
        return named.filter(hash -> !there.contains(hash))
                .findFirst()
                .flatMap(hash -> said("result.otherRecording", hash));
    }

    private Optional<Said> said(String key, Object... further) {
        return Optional.of(Sentences.of(
                key,
                Stream.concat(Stream.of(measurement), Arrays.stream(further)).toArray()));
    }
}
