// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

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
import org.ohmstead.measure.MeasurementInfo;
import org.ohmstead.measure.MeasurementResult;
import org.ohmstead.measure.Subject;
import org.ohmstead.model.CaptureUsed;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Step;
import org.ohmstead.model.SweepPoint;

/** Whether a result is what the measurement said it would give. */
final class ResultCheck {
    private static final int MOST_FIGURES = 10_000;
    private static final int MOST_NOTES = 100;
    private static final int LONGEST_NOTE = 2000;

    private final MeasurementInfo info;
    private final Subject subject;
    private final List<KeptCapture> kept;

    ResultCheck(MeasurementInfo info, Subject subject, List<KeptCapture> kept) {
        this.info = info;
        this.subject = subject;
        this.kept = kept;
    }

    /** Returns what is wrong, to follow the plug-in's name; empty when nothing is. */
    Optional<String> fault(MeasurementResult result) {
        if (result == null) {
            return Optional.of("gave no result.");
        }
        if (result.figures().size() > MOST_FIGURES || result.notes().size() > MOST_NOTES) {
            return Optional.of("gave " + result.figures().size() + " figures and "
                    + result.notes().size() + " notes; at most " + MOST_FIGURES + " and " + MOST_NOTES + " are kept.");
        }
        if (result.notes().stream().anyMatch(note -> note.length() > LONGEST_NOTE)) {
            return Optional.of("gave a note of more than " + LONGEST_NOTE + " letters.");
        }
        Map<String, FigureInfo> known =
                info.figures().stream().collect(Collectors.toMap(FigureInfo::id, Function.identity()));
        Set<List<String>> seen = new HashSet<>();
        for (Figure figure : result.figures()) {
            Optional<String> fault = fault(figure, Optional.ofNullable(known.get(figure.id())));
            if (fault.isPresent()) {
                return fault;
            }
            if (!seen.add(List.of(figure.id(), figure.channel(), figure.at()))) {
                return Optional.of("gave the figure \"" + figure.id() + "\" twice for the same channel and place.");
            }
        }
        return result.power().flatMap(this::fault);
    }

    private static Optional<String> fault(Figure figure, Optional<FigureInfo> known) {
        if (known.isEmpty()) {
            return Optional.of("gave the figure \"" + figure.id() + "\", which it did not announce.");
        }
        if (figure.unit() != known.get().unit()) {
            return Optional.of("gave the figure \"" + figure.id() + "\" in \""
                    + figure.unit().symbol() + "\", but announced it in \""
                    + known.get().unit().symbol() + "\".");
        }
        if (known.get().perChannel() && figure.channel().isBlank()) {
            return Optional.of("gave the figure \"" + figure.id() + "\" without saying for which channel.");
        }
        return Optional.empty();
    }

    private Optional<String> fault(Reading reading) {
        Step step = subject.step();
        if (!reading.stepId().equals(step.id())
                || reading.mode() != step.mode()
                || !reading.loadId().equals(step.loadId())) {
            return Optional.of("gave a reading of the step \"" + reading.stepId() + "\", but the step \"" + step.id()
                    + "\" was to be measured.");
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
                .map(hash -> "gave a reading that rests on the recording " + hash + ", which it did not hand in.");
    }
}
