// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.jface.viewers.DecorationOverlayIcon;
import org.eclipse.jface.viewers.DelegatingStyledCellLabelProvider.IStyledLabelProvider;
import org.eclipse.jface.viewers.IDecoration;
import org.eclipse.jface.viewers.IToolTipProvider;
import org.eclipse.jface.viewers.LabelProvider;
import org.eclipse.jface.viewers.StyledString;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.TextStyle;
import org.eclipse.swt.widgets.Tree;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Severity;
import org.ohmstead.workbench.look.Icons;
import org.ohmstead.workbench.look.Tones;
import org.ohmstead.workbench.section.SectionItem;

/** What the navigator's nodes look like: name, muted summary, how many problems, and an icon that carries the gravest. */
final class NavigatorLabels extends LabelProvider implements IStyledLabelProvider, IToolTipProvider {
    private static final int MOST_HOVER_LINES = 8;

    private final NavigatorTree content;
    private final Tree tree;

    NavigatorLabels(NavigatorTree content, Tree tree) {
        this.content = content;
        this.tree = tree;
    }

    @Override
    public StyledString getStyledText(Object element) {
        StyledString text = new StyledString();
        if (element instanceof NavigatorNode.Title) {
            text.append(content.title());
        } else if (element instanceof NavigatorNode.Section section) {
            text.append(section.page().name());
            String summary = content.summary(section.page());
            if (!summary.isEmpty()) {
                text.append("  " + summary, styler(Tones.of(tree).mutedText()));
            }
            grave(section)
                    .ifPresent(severity -> text.append(
                            "  " + ProblemLine.counted(counted(section)),
                            styler(Tones.of(tree).of(severity))));
        } else if (element instanceof NavigatorNode.Item item) {
            text.append(content.item(item).map(SectionItem::label).orElse(""));
        }
        return text;
    }

    private static StyledString.Styler styler(Color colour) {
        return new StyledString.Styler() {
            @Override
            public void applyStyles(TextStyle style) {
                style.foreground = colour;
            }
        };
    }

    @Override
    public Image getImage(Object element) {
        String name = "project";
        Optional<Severity> severity = Optional.empty();
        if (element instanceof NavigatorNode.Section section) {
            name = section.page().iconName();
            severity = grave(section);
        } else if (element instanceof NavigatorNode.Item item) {
            name = "section-item";
            severity = grave(item);
        }
        String base = name;
        return severity.map(worst -> marked(base, worst)).orElseGet(() -> Icons.image(base));
    }

    private static Image marked(String base, Severity severity) {
        String mark = severity == Severity.ERROR ? "overlay-error" : "overlay-warning";
        return JFaceResources.getResources()
                .get(new DecorationOverlayIcon(
                        Icons.descriptor(base), Icons.descriptor(mark), IDecoration.BOTTOM_RIGHT));
    }

    /** Returns the gravest severity of a node's problems; notes are not worth a mark in the tree. */
    private Optional<Severity> grave(NavigatorNode node) {
        return counted(node).stream().map(Problem::severity).min(Severity::compareTo);
    }

    private List<Problem> counted(NavigatorNode node) {
        return content.problems(node).stream()
                .filter(problem -> problem.severity() != Severity.NOTE)
                .toList();
    }

    @Override
    public String getToolTipText(Object element) {
        List<String> lines = new ArrayList<>();
        if (element instanceof NavigatorNode.Item item) {
            content.item(item)
                    .map(SectionItem::hover)
                    .filter(hover -> !hover.isEmpty())
                    .ifPresent(lines::add);
        }
        if (element instanceof NavigatorNode node && !(element instanceof NavigatorNode.Title)) {
            content.problems(node).forEach(problem -> lines.add(problem.what()));
        }
        return lines.isEmpty() ? null : lines.stream().limit(MOST_HOVER_LINES).collect(Collectors.joining("\n"));
    }
}
