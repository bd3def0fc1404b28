// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ohmstead.curves.CurveGroup;
import org.ohmstead.curves.study.PowerDifference;
import org.ohmstead.curves.study.PowerPrediction;
import org.ohmstead.curves.study.PowerStudy;
import org.ohmstead.curves.study.PowerStudy.PlacedLoad;
import org.ohmstead.curves.ui.internal.PowerCurves.Sort;
import org.ohmstead.units.text.Messages;

/**
 * What is laid over one chart.
 *
 * @param overlays what has curves that belong there
 * @param sentences why others have none
 */
record Comparison(List<Overlay> overlays, List<String> sentences) {
    private static final Messages TEXTS = Messages.of(Comparison.class);

    static final Comparison NONE = new Comparison(List.of(), List.of());

    Comparison {
        overlays = List.copyOf(overlays);
        sentences = List.copyOf(sentences);
    }

    /**
     * The curves of one data set.
     *
     * @param number its place in the list, from 1
     * @param source whose they are
     * @param group the curves
     * @param study the joint study of them, if there can be one
     */
    record Overlay(int number, LaidOver source, CurveGroup group, Optional<PowerStudy> study) {}

    /** Finds the curves that belong in the chart of a group. */
    static Comparison of(List<LaidOver> all, PowerCurves open, CurveGroup inView) {
        List<Overlay> overlays = new ArrayList<>();
        List<String> sentences = new ArrayList<>();
        for (int index = 0; index < all.size(); index++) {
            LaidOver each = all.get(index);
            if (each instanceof LaidOver.OwnKind own && own.sort().equals(Sort.of(inView))) {
                sentences.add(TEXTS.text("compare.shown", own.label()));
            } else if (each instanceof LaidOver.OwnKind own) {
                add(index + 1, own, open, own.sort(), inView, overlays, sentences);
            } else if (each instanceof LaidOver.Known known) {
                add(index + 1, known, known.curves(), Sort.of(inView), inView, overlays, sentences);
            }
        }
        return new Comparison(overlays, sentences);
    }

    private static void add(
            int number,
            LaidOver source,
            PowerCurves curves,
            Sort sort,
            CurveGroup inView,
            List<Overlay> overlays,
            List<String> sentences) {
        Optional<CurveGroup> group = curves.groupsOf(sort).stream()
                .filter(each -> each.mode() == inView.mode() && each.frequencyHz() == inView.frequencyHz())
                .findFirst();
        if (group.isEmpty()) {
            String mode = Words.lower(inView.mode());
            String tone = Words.hertz(inView.frequencyHz());
            sentences.add(
                    source instanceof LaidOver.OwnKind
                            ? TEXTS.text("compare.noCurve", source.label(), mode, tone)
                            : TEXTS.text("compare.noCurveOfKind", source.label(), mode, tone, sort.text()));
            return;
        }
        Optional<JointStudy> joint = curves.studyOf(group.get());
        Optional<PowerStudy> study = joint.flatMap(JointStudy::study);
        overlays.add(new Overlay(number, source, group.get(), study));
        if (study.isEmpty()) {
            joint.ifPresent(each -> sentences.add(TEXTS.text(
                    "compare.leftOut", source.label(), each.findings().get(0))));
        }
    }

    /** Returns how much more power the study in view finds than each that is laid over it, for the loads of both. */
    List<Difference> differences(PowerStudy own, CurveGroup inView, double supplyVolts, double confidence) {
        List<Difference> found = new ArrayList<>();
        for (Overlay overlay : overlays) {
            String name = overlay.source() instanceof LaidOver.OwnKind
                    ? Sort.of(inView).text()
                    : TEXTS.text("compare.thisProject");
            if (overlay.study().isPresent()) {
                PowerStudy other = overlay.study().get();
                for (PlacedLoad load :
                        own.loads().stream().filter(other.loads()::contains).toList()) {
                    PowerPrediction one = own.predict(supplyVolts, load.loadOhms(), load.mode());
                    PowerPrediction two = other.predict(supplyVolts, load.loadOhms(), load.mode());
                    difference(name, one, overlay.source(), two, confidence)
                            .ifPresent(power -> found.add(
                                    new Difference(name, overlay.source().label(), load, supplyVolts, power)));
                }
            }
        }
        return found;
    }

    private static Optional<PowerDifference> difference(
            String name, PowerPrediction first, LaidOver against, PowerPrediction second, double confidence) {
        if (!(first instanceof PowerPrediction.Predicted one)
                || !(second instanceof PowerPrediction.Predicted other)
                || one.powerWatts() <= 0
                || other.powerWatts() <= 0) {
            return Optional.empty();
        }
        if (against instanceof LaidOver.OwnKind) {
            return PowerDifference.of(name, one, against.label(), other, confidence)
                    .map(power -> withDistance(power, name, one, against.label(), other));
        }
        // Nobody knows whether both were read with the same meters, so nothing is taken to cancel.
        PowerDifference power =
                PowerDifference.of(name, one.wholeEstimate(), against.label(), other.wholeEstimate(), confidence);
        return Optional.of(withDistance(power, name, one, against.label(), other));
    }

    private static PowerDifference withDistance(
            PowerDifference power,
            String firstName,
            PowerPrediction.Predicted first,
            String secondName,
            PowerPrediction.Predicted second) {
        return new PowerDifference(
                power.differenceWatts(),
                power.relative(),
                power.differenceDb(),
                power.intervalDb(),
                power.nearest(),
                power.most(),
                power.sentence() + distance(firstName, first) + distance(secondName, second));
    }

    private static String distance(String name, PowerPrediction.Predicted predicted) {
        String sentence = predicted.distance().sentence();
        return sentence.isEmpty() ? "" : " " + name + ": " + sentence;
    }
}
