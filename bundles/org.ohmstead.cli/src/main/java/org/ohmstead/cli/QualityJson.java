// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Locale;
import org.ohmstead.history.quality.CheckValue;
import org.ohmstead.history.quality.GaugeReview;
import org.ohmstead.history.quality.GroupStudy;
import org.ohmstead.history.quality.QualityReview;
import org.ohmstead.metrology.quality.CheckStandardReview;
import org.ohmstead.metrology.quality.CheckStandardReview.Finding;
import org.ohmstead.metrology.quality.ControlLimits;
import org.ohmstead.metrology.quality.RunSignal;

/** Reviews of check standards for machines. */
final class QualityJson {
    private QualityJson() {}

    static void fill(ObjectNode node, QualityReview review) {
        node.put("id", review.standard().id());
        node.put("name", review.standard().name());
        node.put("unit", review.standard().unit());
        node.put("mayRun", review.mayRun());
        review.dueOn().ifPresent(day -> node.put("dueOn", day.toString()));
        ArrayNode values = node.putArray("values");
        for (CheckValue value : review.values().own()) {
            ObjectNode item = values.addObject()
                    .put("entryId", value.entryId())
                    .put("takenAt", value.takenAt().toString())
                    .put("value", value.value())
                    .put("operator", value.operator())
                    .put("bench", value.bench());
            value.standardUncertainty().ifPresent(each -> item.put("standardUncertainty", each));
        }
        review.review().ifPresent(charts -> fill(node, charts));
        review.reference().ifPresent(reference -> {
            ObjectNode item = node.putObject("reference")
                    .put("value", reference.reference())
                    .put("error", reference.error());
            reference.enNumber().ifPresent(number -> item.put("enNumber", number));
        });
        review.days().ifPresent(study -> fill(node.putObject("days"), study));
        review.operators().ifPresent(study -> fill(node.putObject("operators"), study));
        review.benches().ifPresent(study -> fill(node.putObject("benches"), study));
        review.crossed().ifPresent(crossed -> {
            ObjectNode item = node.putObject("operatorsAndBenches");
            crossed.operators().forEach(item.putArray("operators")::add);
            crossed.benches().forEach(item.putArray("benches")::add);
            item.put("repeats", crossed.repeats());
            item.put("repeatability", crossed.study().repeatability());
            item.put("reproducibility", crossed.study().reproducibility());
            item.put("operatorShareRatio", crossed.study().operatorShare());
            item.put("benchShareRatio", crossed.study().benchShare());
        });
        ArrayNode findings = node.putArray("findings");
        for (Finding finding : review.findings()) {
            findings.addObject()
                    .put("serious", finding.serious())
                    .put("what", finding.sentence())
                    .put("remedy", finding.remedy());
        }
        review.notes().forEach(node.putArray("notes")::add);
    }

    private static void fill(ObjectNode node, CheckStandardReview charts) {
        limits(node.putObject("limits"), charts.chart().readings());
        limits(node.putObject("movingRangeLimits"), charts.chart().ranges());
        node.put("baselineCount", charts.chart().baselineCount());
        ArrayNode signals = node.putArray("signals");
        for (RunSignal signal : charts.signals()) {
            signals.addObject()
                    .put("rule", signal.rule().name().toLowerCase(Locale.ROOT))
                    .put("first", signal.firstIndex() + 1)
                    .put("last", signal.lastIndex() + 1);
        }
        charts.drift().ifPresent(line -> node.putObject("drift")
                .put("perDay", line.slope().value())
                .put("standardUncertaintyPerDay", line.slope().standardUncertainty())
                .put("drifts", line.drifts()));
    }

    private static void limits(ObjectNode node, ControlLimits limits) {
        node.put("lower", limits.lower()).put("centre", limits.centre()).put("upper", limits.upper());
    }

    private static void fill(ObjectNode node, GroupStudy study) {
        ArrayNode groups = node.putArray("groups");
        for (int i = 0; i < study.names().size(); i++) {
            groups.addObject()
                    .put("name", study.names().get(i))
                    .put("values", study.sizes().get(i))
                    .put("mean", study.means().get(i));
        }
        node.put("repeatability", study.precision().repeatability());
        node.put("reproducibility", study.precision().reproducibility());
        node.put("repeatabilityLimit", study.precision().repeatabilityLimit());
        node.put("reproducibilityLimit", study.precision().reproducibilityLimit());
        node.put("groupsDiffer", study.precision().groupsDiffer());
        study.suspect().ifPresent(name -> node.putObject("cochran")
                .put("group", name)
                .put("statistic", study.cochran().orElseThrow().statistic())
                .put("criticalValue", study.cochran().orElseThrow().criticalValue())
                .put("outlier", study.cochran().orElseThrow().outlier()));
    }

    static void fill(ObjectNode node, GaugeReview gauge) {
        node.put("by", gauge.what());
        node.put("unit", gauge.unit());
        gauge.items().forEach(node.putArray("items")::add);
        gauge.columns().forEach(node.putArray("columns")::add);
        node.put("repeats", gauge.repeats());
        node.put("gauge", gauge.study().gauge());
        node.put("repeatability", gauge.study().repeatability());
        node.put("reproducibility", gauge.study().reproducibility());
        gauge.study().gaugeShare().ifPresent(share -> node.put("gaugeShareRatio", share));
        node.put("distinctClasses", gauge.study().distinctClasses());
    }
}
