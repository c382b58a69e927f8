using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace MenuLab.Data.Migrations.Sqlite
{
    /// <inheritdoc />
    public partial class Bench : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "date_pattern",
                table: "house_settings",
                type: "TEXT",
                nullable: false,
                defaultValue: "day_month_year");

            migrationBuilder.AddColumn<string>(
                name: "number_pattern",
                table: "house_settings",
                type: "TEXT",
                nullable: false,
                defaultValue: "point");

            migrationBuilder.AddColumn<double>(
                name: "pour_step_ml",
                table: "house_settings",
                type: "REAL",
                nullable: false,
                defaultValue: 2.5);

            migrationBuilder.AddColumn<int>(
                name: "started_at_version",
                table: "drafts",
                type: "INTEGER",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.AddColumn<int>(
                name: "started_from",
                table: "drafts",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "on_hand",
                columns: table => new
                {
                    ingredient = table.Column<byte[]>(type: "BLOB", nullable: false),
                    site = table.Column<byte[]>(type: "BLOB", nullable: false),
                    said_at = table.Column<long>(type: "INTEGER", nullable: false),
                    said_by = table.Column<byte[]>(type: "BLOB", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_on_hand", x => new { x.ingredient, x.site });
                    table.ForeignKey(
                        name: "fk_on_hand_ingredients_ingredient",
                        column: x => x.ingredient,
                        principalTable: "ingredients",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_on_hand_people_said_by",
                        column: x => x.said_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_on_hand_sites_site",
                        column: x => x.site,
                        principalTable: "sites",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "ix_on_hand_said_by",
                table: "on_hand",
                column: "said_by");

            migrationBuilder.CreateIndex(
                name: "ix_on_hand_site",
                table: "on_hand",
                column: "site");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "on_hand");

            migrationBuilder.DropColumn(
                name: "date_pattern",
                table: "house_settings");

            migrationBuilder.DropColumn(
                name: "number_pattern",
                table: "house_settings");

            migrationBuilder.DropColumn(
                name: "pour_step_ml",
                table: "house_settings");

            migrationBuilder.DropColumn(
                name: "started_at_version",
                table: "drafts");

            migrationBuilder.DropColumn(
                name: "started_from",
                table: "drafts");
        }
    }
}
