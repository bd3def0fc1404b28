// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.curves.study.CableModel;
import org.ohmstead.curves.study.CurveMembership;
import org.ohmstead.curves.study.FittedParameter;
import org.ohmstead.curves.study.NormalisedTable;
import org.ohmstead.curves.study.PowerDifference;
import org.ohmstead.curves.study.PowerPrediction;
import org.ohmstead.curves.study.PowerStudy;
import org.ohmstead.curves.study.StudyOutcome;
import org.ohmstead.curves.study.StudyPoint;
import org.ohmstead.curves.study.StudyReadings;
import org.ohmstead.curves.study.StudyRequest;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.Mode;
import org.ohmstead.model.PowerKind;
import org.ohmstead.model.Reading;
import org.ohmstead.testlog.LogEntry;

/** Joint studies of all loads and modes, one for each kind of power, end point and frequency of a log. */
final class CurveStudies {
    private record Key(PowerKind kind, EndPoint endPoint, double frequencyHz) {
        String words() {
            return Texts.of("studies.kind", Texts.kind(kind), Texts.number(frequencyHz), Texts.endPoint(endPoint));
        }
    }

    /** A load to predict the power into, beyond those measured. */
    record Wish(OptionalDouble loadOhms, Mode mode) {}

    private final Map<Key, StudyOutcome> outcomes = new LinkedHashMap<>();
    private final List<String> left = new ArrayList<>();
    private final List<Double> supplyVolts;
    private final Wish wish;

    /**
     * Studies the entries, which hold readings that stand.
     *
     * @param cable the cable to take off when the volts were read at the supply
     */
    CurveStudies(
            List<LogEntry> entries, List<Double> supplyVolts, boolean robust, Wish wish, Optional<CableModel> cable) {
        this.supplyVolts = supplyVolts;
        this.wish = wish;
        Map<Key, List<LogEntry>> groups = new LinkedHashMap<>();
        for (LogEntry entry : entries) {
            Reading reading = entry.reading().orElseThrow();
            Key key = new Key(
                    reading.stimulus().powerKind(),
                    reading.endPoint(),
                    reading.stimulus().frequencyHz());
            groups.computeIfAbsent(key, unused -> new ArrayList<>()).add(entry);
        }
        groups.forEach((key, group) -> {
            List<StudyPoint> points = new ArrayList<>();
            for (LogEntry entry : group) {
                points.addAll(StudyReadings.points(
                        key.words(), entry.id(), entry.reading().orElseThrow()));
            }
            List<Reading> readings =
                    group.stream().map(entry -> entry.reading().orElseThrow()).toList();
            outcomes.put(
                    key,
                    PowerStudy.of(StudyRequest.of(atTerminals(points, cable))
                            .withRobust(robust)
                            .withSharedRelativeUncertainty(StudyReadings.sharedRelativeUncertainty(readings))));
        });
    }

    private List<StudyPoint> atTerminals(List<StudyPoint> points, Optional<CableModel> cable) {
        if (cable.isEmpty()) {
            return points;
        }
        CableModel.Corrected corrected = cable.get().correct(points);
        corrected.refused().forEach(refused -> left.add(refused.point().inWords() + ": " + refused.reason()));
        return corrected.points();
    }

    /** Returns a sentence for each reading that could not be brought to the terminals. */
    List<String> leftOut() {
        return List.copyOf(left);
    }

    /** Prints what each study found, in sentences. */
    void print(Console console, double confidence) {
        outcomes.forEach((key, outcome) -> {
            console.line("");
            console.line(Texts.of("studies.head", key.words()));
            if (outcome instanceof StudyOutcome.Refused refused) {
                console.line("  " + refused.reason());
            } else if (outcome instanceof PowerStudy study) {
                study.findings().forEach(sentence -> console.line("  " + sentence));
                if (wish.loadOhms().isPresent()) {
                    printWish(console, study, confidence);
                }
            }
        });
    }

    /**
     * Returns how the powers of these studies differ from those of others, for each load that both have, at each of the supply voltages;
     * a sentence for each, or one that says that there is nothing in common.
     */
    List<String> against(String ownName, CurveStudies others, String otherName, double confidence) {
        List<String> sentences = new ArrayList<>();
        outcomes.forEach((key, outcome) -> {
            if (outcome instanceof PowerStudy own && others.outcomes.get(key) instanceof PowerStudy other) {
                for (PowerStudy.PlacedLoad load : own.loads()) {
                    if (other.loads().contains(load)) {
                        for (double volts : supplyVolts) {
                            String where = Texts.of(
                                    "studies.where",
                                    key.words(),
                                    Texts.number(load.loadOhms()),
                                    Texts.mode(load.mode()),
                                    Texts.number(volts));
                            PowerDifference.of(
                                            ownName,
                                            own.predict(volts, load.loadOhms(), load.mode()),
                                            otherName,
                                            other.predict(volts, load.loadOhms(), load.mode()),
                                            confidence)
                                    .ifPresent(difference -> sentences.add(where + difference.sentence()));
                        }
                    }
                }
            }
        });
        return sentences.isEmpty() ? List.of(Texts.of("studies.apart", ownName, otherName)) : sentences;
    }

    private void printWish(Console console, PowerStudy study, double confidence) {
        for (double volts : supplyVolts) {
            PowerPrediction prediction = study.predict(volts, wish.loadOhms().getAsDouble(), wish.mode());
            String where = Texts.of(
                    "studies.wish",
                    Texts.number(wish.loadOhms().getAsDouble()),
                    Texts.mode(wish.mode()),
                    Texts.number(volts));
            if (prediction instanceof PowerPrediction.Predicted predicted) {
                console.line("  " + where + Texts.fixed(predicted.powerWatts(), 1) + " \u00b1 "
                        + Texts.fixed(predicted.wholeEstimate().expandedUncertainty(confidence), 1) + " W. "
                        + predicted.distance().sentence());
            } else if (prediction instanceof PowerPrediction.Unknown unknown) {
                console.line("  " + where + unknown.reason());
            }
        }
    }

    /** Returns the studies as JSON. */
    ArrayNode document() {
        ArrayNode list = JsonNodeFactory.instance.arrayNode();
        outcomes.forEach((key, outcome) -> {
            ObjectNode node = list.addObject();
            node.put("kind", key.kind().name());
            node.put("endPoint", Texts.endPoint(key.endPoint()));
            node.put("frequencyHz", key.frequencyHz());
            if (outcome instanceof StudyOutcome.Refused refused) {
                node.put("refused", refused.reason());
            } else if (outcome instanceof PowerStudy study) {
                fill(node, study);
            }
        });
        return list;
    }

    private void fill(ObjectNode node, PowerStudy study) {
        node.put("model", study.fit().kind().name());
        node.put("clear", study.choice().clear());
        ArrayNode parameters = node.putArray("parameters");
        for (FittedParameter parameter : study.fit().parameters()) {
            parameters
                    .addObject()
                    .put("name", parameter.parameter().name())
                    .put("value", parameter.estimate().value())
                    .put("standardUncertainty", parameter.estimate().standardUncertainty())
                    .put("atBound", parameter.atBound());
        }
        ArrayNode findings = node.putArray("findings");
        study.findings().forEach(findings::add);
        ArrayNode normalised = node.putArray("normalised");
        for (NormalisedTable.Row row : NormalisedTable.of(study, supplyVolts).rows()) {
            row.predictions().forEach(prediction -> add(normalised, prediction));
        }
        if (wish.loadOhms().isPresent()) {
            ArrayNode wished = node.putArray("predictions");
            supplyVolts.forEach(
                    volts -> add(wished, study.predict(volts, wish.loadOhms().getAsDouble(), wish.mode())));
        }
        ArrayNode off = node.putArray("offCurve");
        for (CurveMembership.Check check : CurveMembership.of(study).offCurve()) {
            off.addObject()
                    .put("entry", check.point().readingId())
                    .put("channel", check.point().channel())
                    .put("relativeDeviation", check.relativeDeviation())
                    .put("sentence", check.sentence());
        }
    }

    private static void add(ArrayNode list, PowerPrediction prediction) {
        ObjectNode node = list.addObject();
        if (prediction instanceof PowerPrediction.Predicted predicted) {
            node.put("mode", predicted.mode().name())
                    .put("loadOhms", predicted.loadOhms())
                    .put("supplyVolts", predicted.supplyVolts())
                    .put("powerWatts", predicted.powerWatts())
                    .put("standardUncertaintyWatts", predicted.wholeUncertaintyWatts());
        } else if (prediction instanceof PowerPrediction.Unknown unknown) {
            node.put("unknown", unknown.reason());
        }
    }
}
