// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.ohmstead.measure.Subject;
import org.ohmstead.model.Precaution;
import org.ohmstead.model.Project;

/**
 * A plan that is to be carried out.
 *
 * @param project the whole project
 * @param projectRevision hash that names the state of the project; what was logged under another one does not count as done
 * @param projectFolder where the recordings are kept
 * @param items what is to be measured, in this order; no measurement twice at a step
 * @param operator who runs it; may be empty
 * @param softwareVersion version that is kept with each result
 * @param precautions what is asked before each item beside the precautions that are plug-ins
 */
public record PlanSetup(
        Project project,
        String projectRevision,
        Path projectFolder,
        List<PlanItem> items,
        String operator,
        String softwareVersion,
        List<Precaution> precautions) {
    public PlanSetup {
        precautions = List.copyOf(precautions);
        Objects.requireNonNull(projectFolder, "projectFolder");
        Objects.requireNonNull(operator, "operator");
        if (projectRevision.isBlank() || softwareVersion.isBlank()) {
            throw new IllegalArgumentException("projectRevision or softwareVersion is blank; both need a text");
        }
        items = List.copyOf(items);
        Set<List<String>> seen = new HashSet<>();
        for (PlanItem item : items) {
            if (project.step(item.stepId()).isEmpty()) {
                throw new IllegalArgumentException(
                        "items names the step \"" + item.stepId() + "\", which the project does not have");
            }
            if (!seen.add(List.of(item.stepId(), item.measurementId()))) {
                throw new IllegalArgumentException("items holds the measurement \"" + item.measurementId()
                        + "\" twice at the step \"" + item.stepId() + "\"");
            }
        }
    }

    /** Makes a setup without precautions of its own. */
    public PlanSetup(
            Project project,
            String projectRevision,
            Path projectFolder,
            List<PlanItem> items,
            String operator,
            String softwareVersion) {
        this(project, projectRevision, projectFolder, items, operator, softwareVersion, List.of());
    }

    /** Returns this with other precautions of its own. */
    public PlanSetup withPrecautions(List<Precaution> newPrecautions) {
        return new PlanSetup(project, projectRevision, projectFolder, items, operator, softwareVersion, newPrecautions);
    }

    /** Returns a setup of all steps in the plan's order with one measurement. */
    public static PlanSetup ofPlan(
            Project project,
            String projectRevision,
            Path projectFolder,
            String measurementId,
            String operator,
            String softwareVersion) {
        List<PlanItem> items = project.plan().stream()
                .map(step -> new PlanItem(step.id(), measurementId, Map.of()))
                .toList();
        return new PlanSetup(project, projectRevision, projectFolder, items, operator, softwareVersion);
    }

    /** Returns this with other things to be measured, or in another order. */
    public PlanSetup withItems(List<PlanItem> newItems) {
        return new PlanSetup(project, projectRevision, projectFolder, newItems, operator, softwareVersion, precautions);
    }

    Subject subject(PlanItem item) {
        return new Subject(project, project.step(item.stepId()).orElseThrow());
    }
}
