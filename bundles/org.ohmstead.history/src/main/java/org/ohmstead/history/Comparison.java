// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.ohmstead.curves.LoadCurve;
import org.ohmstead.curves.LoadCurves;
import org.ohmstead.curves.Prediction;
import org.ohmstead.history.internal.Causes;
import org.ohmstead.history.internal.Words;
import org.ohmstead.metrology.Estimate;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.Reading;
import org.ohmstead.units.text.Messages;

/**
 * Amplifiers beside each other, or the same one in several periods, at a common supply voltage and load. Where a subject has readings at
 * the voltage within their uncertainty, they count alone; else the curve through its readings, never beyond them.
 *
 * @param request under what
 * @param ground the end point and frequency that are compared; empty when nobody has a reading that fits
 * @param powers of those that can be compared, in the order given
 * @param differences of each pair of them, in that order
 * @param refusals whole sentences about those that cannot be, and what to do
 */
public record Comparison(
        ComparisonRequest request,
        Optional<Ground> ground,
        List<SubjectPower> powers,
        List<SubjectDifference> differences,
        List<String> refusals) {
    private static final Messages TEXTS = Messages.of(Comparison.class);

    /** How many subjects are compared at most. */
    public static final int MOST_SUBJECTS = 10;

    /** A load is the wanted one when it differs from it by no more than this, relatively; the power is brought to the wanted one. */
    static final double SAME_LOAD_RATIO = 0.01;

    /**
     * What else must be common.
     *
     * @param endPoint what ended the search for power
     * @param frequencyHz of the tone
     */
    public record Ground(EndPoint endPoint, double frequencyHz) {
        /** Returns it in words: "1 % THD_F at 1000 Hz". */
        public String words() {
            return TEXTS.text("ground", Words.endPoint(endPoint), Words.quantity(frequencyHz, "Hz"));
        }
    }

    /** Copies the lists. */
    public Comparison {
        powers = List.copyOf(powers);
        differences = List.copyOf(differences);
        refusals = List.copyOf(refusals);
    }

    /**
     * Compares.
     *
     * @param subjects 1 to 10, each with a name of its own
     * @param request under what
     * @throws HistoryException when there are none, too many, or two of the same name
     */
    public static Comparison of(List<Subject> subjects, ComparisonRequest request) throws HistoryException {
        if (subjects.isEmpty() || subjects.size() > MOST_SUBJECTS) {
            throw new HistoryException(
                    TEXTS.text("compare.count", Integer.toString(subjects.size()), Integer.toString(MOST_SUBJECTS)));
        }
        if (subjects.stream().map(Subject::name).distinct().count() < subjects.size()) {
            throw new HistoryException(TEXTS.text("compare.sameName"));
        }
        Optional<Ground> ground = ground(subjects, request);
        List<SubjectPower> powers = new ArrayList<>();
        List<String> refusals = new ArrayList<>();
        for (Subject subject : subjects) {
            List<Reading> fitting =
                    ground.map(common -> fitting(subject, request, common)).orElse(List.of());
            if (fitting.isEmpty()) {
                refusals.add(TEXTS.text(
                        ground.isPresent() ? "compare.noReading.to" : "compare.noReading",
                        subject.name(),
                        Words.mode(request.mode()),
                        Words.quantity(request.loadOhms(), Words.ohm()),
                        ground.map(Ground::words).orElse("")));
            } else {
                power(subject, fitting, request)
                        .ifPresentOrElse(powers::add, () -> refusals.add(outside(subject, fitting, request)));
            }
        }
        return new Comparison(request, ground, powers, differences(powers, request), refusals);
    }

    private static List<SubjectDifference> differences(List<SubjectPower> powers, ComparisonRequest request) {
        int pairs = powers.size() * (powers.size() - 1) / 2;
        List<SubjectDifference> differences = new ArrayList<>();
        for (int first = 0; first < powers.size(); first++) {
            for (int second = first + 1; second < powers.size(); second++) {
                differences.add(
                        SubjectDifference.of(powers.get(first), powers.get(second), request.confidence(), pairs));
            }
        }
        return differences;
    }

    /** The end point and frequency that most have; of several the least distortion. */
    private static Optional<Ground> ground(List<Subject> subjects, ComparisonRequest request) {
        Map<Ground, Integer> counts = new LinkedHashMap<>();
        for (Subject subject : subjects) {
            subject.readings().stream()
                    .filter(reading -> fits(reading, request))
                    .map(Comparison::ground)
                    .distinct()
                    .forEach(each -> counts.merge(each, 1, Integer::sum));
        }
        return counts.keySet().stream()
                .max(Comparator.<Ground>comparingInt(counts::get)
                        .thenComparing(each -> -distortion(each.endPoint()))
                        .thenComparing(each -> -Math.abs(Math.log(each.frequencyHz() / 1000))));
    }

    private static double distortion(EndPoint endPoint) {
        return endPoint instanceof EndPoint.DistortionLimit limit ? limit.ratio() : 1;
    }

    private static Ground ground(Reading reading) {
        return new Ground(reading.endPoint(), reading.stimulus().frequencyHz());
    }

    private static boolean fits(Reading reading, ComparisonRequest request) {
        return reading.mode() == request.mode()
                && reading.stimulus().powerKind() == request.kind()
                && Math.abs(reading.nominalLoadOhms() / request.loadOhms() - 1) <= SAME_LOAD_RATIO
                && request.endPoint().map(reading.endPoint()::equals).orElse(true)
                && (request.frequencyHz().isEmpty()
                        || request.frequencyHz().getAsDouble()
                                == reading.stimulus().frequencyHz());
    }

    /** Readings of one nominal load, the nearest to the wanted one. */
    private static List<Reading> fitting(Subject subject, ComparisonRequest request, Ground common) {
        List<Reading> all = subject.readings().stream()
                .filter(reading -> fits(reading, request) && ground(reading).equals(common))
                .toList();
        Optional<Double> nearest = all.stream()
                .map(Reading::nominalLoadOhms)
                .min(Comparator.comparingDouble(ohms -> Math.abs(ohms - request.loadOhms())));
        return all.stream()
                .filter(reading -> nearest.get() == reading.nominalLoadOhms())
                .toList();
    }

    private static Optional<SubjectPower> power(Subject subject, List<Reading> fitting, ComparisonRequest request) {
        List<Reading> near = fitting.stream()
                .filter(reading -> isAt(reading.weakestChannel(), request.supplyVolts()))
                .toList();
        Optional<SubjectPower> direct = weakest(subject, near, request, SubjectPower.Origin.DIRECT);
        return direct.isPresent() ? direct : weakest(subject, fitting, request, SubjectPower.Origin.CURVE);
    }

    /** What the distance does to the power, at first order of a square law, is within the uncertainty of the reading. */
    private static boolean isAt(ChannelReading channel, double supplyVolts) {
        double shiftWatts = 2 * Math.abs(channel.supplyVolts() / supplyVolts - 1) * channel.powerWatts();
        return shiftWatts <= channel.standardUncertaintyWatts();
    }

    private static Optional<SubjectPower> weakest(
            Subject subject, List<Reading> readings, ComparisonRequest request, SubjectPower.Origin origin) {
        List<SubjectPower> channels = new ArrayList<>();
        for (LoadCurve curve : LoadCurves.fit(readings)) {
            Prediction prediction = curve.curve().predict(request.supplyVolts());
            boolean beyond = origin == SubjectPower.Origin.CURVE && prediction.extrapolated();
            if (beyond || prediction.powerWatts() <= 0) {
                return Optional.empty();
            }
            double toLoad = curve.nominalLoadOhms() / request.loadOhms();
            Estimate found = prediction.estimate();
            channels.add(new SubjectPower(
                    subject,
                    curve.channel(),
                    new Estimate(
                            found.value() * toLoad, found.standardUncertainty() * toLoad, found.degreesOfFreedom()),
                    new Causes(subject.source()).of(readings, curve.channel()),
                    origin,
                    curve.points().size()));
        }
        return channels.stream()
                .min(Comparator.comparingDouble(power -> power.own().value()));
    }

    private static String outside(Subject subject, List<Reading> fitting, ComparisonRequest request) {
        double lowest = fitting.stream()
                .mapToDouble(reading -> reading.weakestChannel().supplyVolts())
                .min()
                .orElseThrow();
        double highest = fitting.stream()
                .mapToDouble(reading -> reading.weakestChannel().supplyVolts())
                .max()
                .orElseThrow();
        boolean one = lowest == highest;
        return TEXTS.text(
                one ? "compare.outside.one" : "compare.outside.many",
                subject.name(),
                one ? Words.quantity(lowest, "V") : Words.number(lowest),
                Words.quantity(request.supplyVolts(), "V"),
                Words.quantity(highest, "V"));
    }
}
